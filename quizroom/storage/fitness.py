"""Whether a database can be served from just now: it answers, and what is said to it could be kept."""

import logging
import shutil
from collections.abc import Callable
from pathlib import Path

from sqlalchemy import Connection, Engine, select, text
from sqlalchemy.exc import OperationalError, SQLAlchemyError

from quizroom.storage.database import BUSY_MS

LOCKED = "database is locked"
"""SQLite's words while somebody else writes (SQLITE_BUSY)."""

logger = logging.getLogger(__name__)

SCARCE_BYTES = 8 * 1024 * 1024
"""With less room than this no class can begin: one of 300 takes 2.2 MB, and the write-ahead log as much."""


def free_in(folder: Path) -> int:
    """Free bytes where a folder lies."""
    return shutil.disk_usage(folder).free


def store_fault(engine: Engine, *, free_in: Callable[[Path], int] = free_in) -> str:
    """What keeps the database from being served from, in a sentence for everybody; empty if nothing does.

    The log gets the reason, which may name hosts and users.
    """
    try:
        with engine.connect() as connection:
            if engine.dialect.name == "sqlite":
                return _fault_of_file(connection, Path(engine.url.database or ""), free_in)
            connection.execute(select(1))
            read_only = connection.execute(text("SHOW transaction_read_only")).scalar_one() == "on"
            return "The database may only be read." if read_only else ""
    except SQLAlchemyError as error:
        logger.warning("the database does not answer: %s", str(error).splitlines()[0])
        return "The database does not answer; the server's log says why."


def unwritable(connection: Connection, *, patience_ms: int) -> str:
    """Why nothing can be written to this SQLite database within so long; empty if it can."""
    # What has been asked until now may have begun a transaction.
    connection.rollback()
    connection.exec_driver_sql(f"PRAGMA busy_timeout={patience_ms}")
    try:
        connection.exec_driver_sql("BEGIN IMMEDIATE")
    except OperationalError as error:
        return str(error.orig)
    finally:
        connection.rollback()
        connection.exec_driver_sql(f"PRAGMA busy_timeout={BUSY_MS}")
    return ""


def _fault_of_file(connection: Connection, file: Path, free_in: Callable[[Path], int]) -> str:
    # An open file goes on being read after it was taken away.
    if not file.exists():
        return "The database file is gone."
    if free_in(file.parent) < SCARCE_BYTES:
        return "The disk is full."
    # Whoever waits here lets the whole server wait, and who writes just now is soon done.
    reason = unwritable(connection, patience_ms=0)
    if reason and reason != LOCKED:
        logger.warning("the database cannot be written: %s", reason)
        return "The database cannot be written; the server's log says why."
    return ""
