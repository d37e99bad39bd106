"""Each store under the same contract."""

from collections.abc import Iterator
from contextlib import ExitStack
from pathlib import Path

import pytest
from sqlalchemy import Engine

from quizroom.service.ports import Accounts, EventLog, Heartbeat
from quizroom.storage.accounts import SqlAccounts, SqlHeartbeat
from quizroom.storage.database import open_database
from quizroom.storage.event_log import SqlEventLog
from quizroom.storage.memory import MemoryAccounts, MemoryEventLog, MemoryHeartbeat
from tests.storage.databases import OpenHere, url_in

STORES = ("memory", "SQLite")


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
def log(request: pytest.FixtureRequest, open_here: OpenHere) -> EventLog:
    """An empty event log of each kind."""
    return MemoryEventLog() if request.param == "memory" else SqlEventLog(open_here())


@pytest.fixture(params=STORES)
def accounts(request: pytest.FixtureRequest, open_here: OpenHere) -> Accounts:
    """Empty accounts of each kind."""
    return MemoryAccounts() if request.param == "memory" else SqlAccounts(open_here())


@pytest.fixture(params=STORES)
def heartbeat(request: pytest.FixtureRequest, open_here: OpenHere) -> Heartbeat:
    """A heart that has not beaten yet, of each kind."""
    return MemoryHeartbeat() if request.param == "memory" else SqlHeartbeat(open_here())
