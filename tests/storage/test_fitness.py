"""A store that could not keep an answer says so before a class comes."""

import logging
import sqlite3
from pathlib import Path

import pytest
from sqlalchemy import Engine

from quizroom.storage.addresses import usable_database_url
from quizroom.storage.database import BUSY_MS, open_database
from quizroom.storage.fitness import SCARCE_BYTES, store_fault
from tests.services import PostgreSql
from tests.storage.databases import OpenHere, read_only


def test_a_sound_store_has_no_fault(database: Engine | None) -> None:
    if database is not None:
        assert store_fault(database) == ""
        assert store_fault(database) == ""


def test_a_file_that_was_taken_away_is_told(open_here: OpenHere, tmp_path: Path) -> None:
    engine = open_here()
    assert store_fault(engine) == ""
    for file in tmp_path.glob("quizroom.sqlite*"):
        file.unlink()
    assert store_fault(engine) == "The database file is gone."


@pytest.mark.parametrize("free,fault", [(SCARCE_BYTES - 1, "The disk is full."), (SCARCE_BYTES, "")])
def test_a_full_disk_is_told(engine: Engine, free: int, fault: str) -> None:
    assert store_fault(engine, free_in=lambda _: free) == fault


def test_a_store_that_may_only_be_read_is_told_and_the_log_says_why(
    tmp_path: Path, caplog: pytest.LogCaptureFixture
) -> None:
    engine = read_only(tmp_path)
    assert store_fault(engine).startswith("The database cannot be written")
    assert "readonly" in caplog.messages[0]
    engine.dispose()


def test_whoever_writes_for_a_while_keeps_nobody_waiting(engine: Engine, tmp_path: Path) -> None:
    holder = sqlite3.connect(tmp_path / "quizroom.sqlite", isolation_level=None)
    holder.execute("BEGIN IMMEDIATE")
    assert store_fault(engine) == ""
    holder.close()
    with engine.connect() as connection:
        assert connection.exec_driver_sql("PRAGMA busy_timeout").scalar_one() == BUSY_MS


def test_of_a_postgresql_that_is_away_nothing_but_that_is_told(
    postgresql: PostgreSql, caplog: pytest.LogCaptureFixture
) -> None:
    caplog.set_level(logging.WARNING)
    engine = open_database(usable_database_url(postgresql.new_database()))
    postgresql.stop()
    told = store_fault(engine)
    postgresql.start()
    assert told == "The database does not answer; the server's log says why."
    assert str(postgresql.port) in caplog.messages[0]
    assert store_fault(engine) == ""
    engine.dispose()
