"""The condition that a database is in, found without changing anything in it."""

import time
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta

from sqlalchemy import Connection, Engine, func, select, text
from sqlalchemy.exc import SQLAlchemyError

from quizroom.service.ports import NotStored
from quizroom.storage.fitness import unwritable
from quizroom.storage.moments import in_utc
from quizroom.storage.tables import heartbeat
from quizroom.storage.upgrading import Release, release_of

PATIENCE_MS = 2000
"""Whoever holds a database for longer keeps a class waiting."""
ASKED = ("fsync", "max_connections", "synchronous_commit", "transaction_read_only")
"""Settings of PostgreSQL that decide what a commit is worth, and how many may come."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Condition:
    """What a database tells of itself."""

    release: Release
    answer_s: float
    """How long it takes to answer the simplest question, in seconds."""
    ahead: timedelta
    """How far its clock is ahead of this machine's; none for SQLite, which has no clock."""
    last_beat: datetime | None
    """When a server last showed that it lives."""
    damage: str
    """What SQLite's own check finds; empty if nothing."""
    locked: str
    """Why nothing could be written just now; empty if it could."""
    settings: Mapping[str, str]
    """Those in `ASKED`; none for SQLite."""


def condition_of(engine: Engine) -> Condition:
    """Ask the database.

    Raises:
        NotStored: it does not answer.
    """
    embedded = engine.dialect.name == "sqlite"
    try:
        with engine.connect() as connection:
            began = time.monotonic()
            connection.execute(select(1))
            answer_s = time.monotonic() - began
            release = release_of(connection)
            beat = (
                connection.execute(select(func.max(heartbeat.c.at))).scalar() if release != "none" else None
            )
            return Condition(
                release=release,
                answer_s=answer_s,
                ahead=timedelta() if embedded else _ahead(connection),
                last_beat=None if beat is None else in_utc(beat),
                damage=_damage(connection) if embedded else "",
                locked=unwritable(connection, patience_ms=PATIENCE_MS) if embedded else "",
                settings={} if embedded else _settings(connection),
            )
    except SQLAlchemyError as error:
        raise NotStored(str(error)) from error


def _ahead(connection: Connection) -> timedelta:
    before = datetime.now(UTC)
    there: datetime = connection.execute(text("SELECT clock_timestamp()")).scalar_one()
    return there - (before + (datetime.now(UTC) - before) / 2)


def _damage(connection: Connection) -> str:
    found = str(connection.exec_driver_sql("PRAGMA quick_check(1)").scalar_one())
    return "" if found == "ok" else found


def _settings(connection: Connection) -> dict[str, str]:
    return {name: str(connection.execute(text(f"SHOW {name}")).scalar_one()) for name in ASKED}
