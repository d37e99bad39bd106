"""Opening the database."""

from typing import Any

from sqlalchemy import Engine, create_engine, event, select
from sqlalchemy.exc import SQLAlchemyError

from quizroom.service.ports import NotStored
from quizroom.storage.tables import metadata


def open_database(url: str) -> Engine:
    """Open a database and make the tables that are missing.

    SQLite runs with a write-ahead log and full synchronisation: a commit survives a killed
    process and a lost power supply.

    Raises:
        NotStored: the database cannot be opened or written.
    """
    # What is stored must not come out in the text of an error, and so in a log.
    engine = create_engine(url, hide_parameters=True)
    if engine.dialect.name == "sqlite":
        event.listen(engine, "connect", _set_up_sqlite)
    try:
        metadata.create_all(engine)
    except SQLAlchemyError as error:
        raise NotStored(str(error)) from error
    return engine


def database_fault(engine: Engine) -> str:
    """What keeps the database from answering, in a sentence; empty if it answers."""
    try:
        with engine.connect() as connection:
            connection.execute(select(1))
    except SQLAlchemyError as error:
        return f"The database does not answer: {str(error).splitlines()[0]}"
    return ""


def _set_up_sqlite(connection: Any, _record: Any) -> None:
    for pragma in ("journal_mode=WAL", "synchronous=FULL", "busy_timeout=5000"):
        connection.execute(f"PRAGMA {pragma}")
