"""Reading the database, and writing to it: one transaction, durable or refused."""

from collections.abc import Iterator
from contextlib import contextmanager
from threading import Lock

from sqlalchemy import Connection, Engine
from sqlalchemy.exc import SQLAlchemyError

from quizroom.service.ports import NotStored


@contextmanager
def writing(engine: Engine, turn: Lock) -> Iterator[Connection]:
    """A transaction that is committed at the end, one writer at a time.

    Nothing inside may yield to other green threads: two open SQLite writes would block the process.

    Raises:
        NotStored: the store refuses or fails; nothing was written.
    """
    try:
        with turn, engine.begin() as connection:
            yield connection
    except SQLAlchemyError as error:
        raise NotStored(str(error)) from error


@contextmanager
def reading(engine: Engine) -> Iterator[Connection]:
    """A connection to read from.

    Raises:
        NotStored: the store does not answer.
    """
    try:
        with _for_one_query(engine).connect() as connection:
            yield connection
    except SQLAlchemyError as error:
        raise NotStored(str(error)) from error


def _for_one_query(engine: Engine) -> Engine:
    # PostgreSQL is reached over a network: without a transaction around it a query is one way there and
    # back, not three.
    return (
        engine if engine.dialect.name == "sqlite" else engine.execution_options(isolation_level="AUTOCOMMIT")
    )
