"""Each store under the same contract."""

from collections.abc import Iterator
from contextlib import ExitStack
from pathlib import Path

import pytest
from sqlalchemy import Engine

from quizroom.service.ports import Accounts, EventLog, Heartbeat
from quizroom.storage.accounts import SqlAccounts, SqlHeartbeat
from quizroom.storage.addresses import usable_database_url
from quizroom.storage.database import open_database
from quizroom.storage.event_log import SqlEventLog
from quizroom.storage.memory import MemoryAccounts, MemoryEventLog, MemoryHeartbeat
from tests.services import PostgreSql
from tests.storage.databases import OpenHere, url_in

STORES = ("memory", "SQLite", "PostgreSQL")


@pytest.fixture
def open_here(tmp_path: Path) -> Iterator[OpenHere]:
    """Open the test's database file, as often as it likes; all are closed with the test."""
    with ExitStack() as closing:

        def open_here() -> Engine:
            opened = open_database(url_in(tmp_path))
            closing.callback(opened.dispose)
            return opened

        yield open_here


@pytest.fixture
def engine(open_here: OpenHere) -> Engine:
    """A fresh database file."""
    return open_here()


@pytest.fixture(params=STORES)
def database(request: pytest.FixtureRequest, open_here: OpenHere) -> Iterator[Engine | None]:
    """An empty database of each kind; None stands for memory."""
    match request.param:
        case "memory":
            yield None
        case "SQLite":
            yield open_here()
        case _:
            cluster: PostgreSql = request.getfixturevalue("postgresql")
            opened = open_database(usable_database_url(cluster.new_database()), connections=4)
            yield opened
            opened.dispose()


@pytest.fixture
def log(database: Engine | None) -> EventLog:
    """An empty event log of each kind."""
    return MemoryEventLog() if database is None else SqlEventLog(database)


@pytest.fixture
def accounts(database: Engine | None) -> Accounts:
    """Empty accounts of each kind."""
    return MemoryAccounts() if database is None else SqlAccounts(database)


@pytest.fixture
def heartbeat(database: Engine | None) -> Heartbeat:
    """A heart that has not beaten yet, of each kind."""
    return MemoryHeartbeat() if database is None else SqlHeartbeat(database)
