"""Each store under the same contract."""

from pathlib import Path

import pytest
from sqlalchemy import Engine

from quizroom.service.ports import Accounts, EventLog, Heartbeat
from quizroom.storage.accounts import SqlAccounts, SqlHeartbeat
from quizroom.storage.database import open_database
from quizroom.storage.event_log import SqlEventLog
from quizroom.storage.memory import MemoryAccounts, MemoryEventLog, MemoryHeartbeat
from tests.storage.databases import url_in

STORES = ("memory", "SQLite")


@pytest.fixture
def engine(tmp_path: Path) -> Engine:
    """A fresh database file."""
    return open_database(url_in(tmp_path))


@pytest.fixture(params=STORES)
def log(request: pytest.FixtureRequest, tmp_path: Path) -> EventLog:
    """An empty event log of each kind."""
    return MemoryEventLog() if request.param == "memory" else SqlEventLog(open_database(url_in(tmp_path)))


@pytest.fixture(params=STORES)
def accounts(request: pytest.FixtureRequest, tmp_path: Path) -> Accounts:
    """Empty accounts of each kind."""
    return MemoryAccounts() if request.param == "memory" else SqlAccounts(open_database(url_in(tmp_path)))


@pytest.fixture(params=STORES)
def heartbeat(request: pytest.FixtureRequest, tmp_path: Path) -> Heartbeat:
    """A heart that has not beaten yet, of each kind."""
    return MemoryHeartbeat() if request.param == "memory" else SqlHeartbeat(open_database(url_in(tmp_path)))
