"""Opening the database."""

import logging
import os
from pathlib import Path
from typing import Any

from sqlalchemy import Engine, create_engine, event, make_url
from sqlalchemy.exc import SQLAlchemyError

from quizroom.service.ports import NotStored
from quizroom.storage.upgrading import PATIENCE_MS, upgrade

FEW_CONNECTIONS = 2
"""Enough for a command; a server is given more."""
BUSY_MS = 5000
"""How long a step waits while another program writes to SQLite."""
CONNECTION_WAIT_S = 10
"""How long somebody waits for a free connection before the store counts as failed."""
LINE_CARE = {
    "connect_timeout": 5,
    "keepalives_idle": 10,
    "keepalives_interval": 3,
    "keepalives_count": 3,
    "tcp_user_timeout": 15_000,
}
"""libpq parameters: a database that has vanished without a word is given up after 15 s (PostgreSQL 18
documentation, 32.1.2)."""


def open_database(url: str, *, connections: int = FEW_CONNECTIONS) -> Engine:
    """Open a database and bring its tables up to date.

    SQLite runs with a write-ahead log and full synchronisation: a commit survives a killed
    process and a lost power supply. PostgreSQL does so by its own default.

    Args:
        url: its address.
        connections: the most that are opened at once to PostgreSQL.

    Raises:
        NotStored: the database cannot be opened or written.
    """
    engine = _engine(url, connections)
    try:
        upgrade(engine)
    except SQLAlchemyError as error:
        engine.dispose()
        raise NotStored(str(error)) from error
    except NotStored:
        engine.dispose()
        raise
    return engine


def open_as_it_is(url: str) -> Engine:
    """Open a database and change nothing in it, whatever release it is of; nothing is connected yet.

    Raises:
        NotStored: there is none.
    """
    file = make_url(url).database or ""
    if url.startswith("sqlite") and not Path(file).exists():
        raise NotStored(f"there is no database in it ({file})")
    return _engine(url, FEW_CONNECTIONS)


def _engine(url: str, connections: int) -> Engine:
    # What is stored must not come out in the text of an error, and so in a log.
    if url.startswith("sqlite"):
        engine = create_engine(url, hide_parameters=True)
        event.listen(engine, "connect", _set_up_sqlite)
        return engine
    # By default the driver waits in C and stops all green threads. It reads this when it is first imported,
    # below.
    os.environ.setdefault("PSYCOPG_WAIT_FUNC", "wait_select")
    # It warns of every version that is taken, which is how two workers find out who was first.
    logging.getLogger("psycopg").setLevel(logging.ERROR)
    return create_engine(
        url,
        hide_parameters=True,
        pool_size=connections,
        max_overflow=0,
        pool_timeout=CONNECTION_WAIT_S,
        # A restarted database costs nobody an error: each connection is tried before it is used.
        pool_pre_ping=True,
        connect_args=LINE_CARE,
        # Otherwise each new connection would ask for a type that is not used here.
        use_native_hstore=False,
    )


def _set_up_sqlite(connection: Any, _record: Any) -> None:
    # Whoever starts while another program makes the tables has to wait for that before its first step.
    for pragma in (f"busy_timeout={PATIENCE_MS}", "journal_mode=WAL", f"busy_timeout={BUSY_MS}"):
        connection.execute(f"PRAGMA {pragma}")
    for pragma in ("synchronous=FULL", "secure_delete=ON"):
        connection.execute(f"PRAGMA {pragma}")
