"""Database files for tests, sound and spoilt."""

from collections.abc import Callable
from pathlib import Path
from typing import Any

from sqlalchemy import Engine, event

from quizroom.storage.database import open_database

OpenHere = Callable[[], Engine]


def url_in(folder: Path) -> str:
    """Address of the database in a data folder."""
    return f"sqlite:///{folder / 'quizroom.sqlite'}"


def full_disk(folder: Path) -> Engine:
    """A database that cannot grow by another page: SQLite says what it says on a full disk."""
    return _limited(folder, "max_page_count=1")  # never below what is used already


def read_only(folder: Path) -> Engine:
    """A database that may only be read."""
    return _limited(folder, "query_only=ON")


def _limited(folder: Path, pragma: str) -> Engine:
    engine = open_database(url_in(folder))
    engine.dispose()

    def limit(connection: Any, _record: Any) -> None:
        connection.execute(f"PRAGMA {pragma}")

    event.listen(engine, "connect", limit)
    return engine
