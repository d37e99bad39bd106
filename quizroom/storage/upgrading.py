"""Bringing a database from any earlier release to the tables of this one."""

import logging
from pathlib import Path
from typing import TYPE_CHECKING, Literal

from sqlalchemy import Connection, Engine, func, inspect, select, text

from quizroom.service.ports import NotStored
from quizroom.storage.schema import metadata

if TYPE_CHECKING:
    from alembic.config import Config

logger = logging.getLogger(__name__)

FIRST, NEWEST = "0001", "0007"
"""Numbers of the first release's tables and of today's; a test compares the latter with the migrations."""
Release = Literal["none", "earlier", "this", "later"]
"""Whose tables a database has, seen from this release; numbers of migrations sort as text."""
VERSION_TABLE = "alembic_version"
LOCK = 0x71756972
"""Any number that stays the same: whoever changes the tables of PostgreSQL holds the lock of this number."""
PATIENCE_MS = 30_000
"""How long a program waits while another changes the tables of SQLite."""


def upgrade(engine: Engine) -> None:
    """Run the migrations that are missing: all of them, or none; one program at a time.

    Raises:
        NotStored: the database belongs to a later release.
    """
    with engine.connect() as connection:
        if _is_up_to_date(connection):
            return
    with engine.begin() as connection:
        _wait_for_others(connection)
        if not _is_up_to_date(connection):
            migrate(connection)


def release_of(connection: Connection) -> Release:
    """Which release's tables the database has."""
    present = set(inspect(connection).get_table_names())
    if VERSION_TABLE not in present:
        return "earlier" if "events" in present else "none"
    number = connection.execute(text(f"SELECT version_num FROM {VERSION_TABLE}")).scalar()  # noqa: S608 - a name of our own
    if number is not None and number > NEWEST:
        return "later"
    return "this" if number == NEWEST and present.issuperset(metadata.tables) else "earlier"


def migrate(connection: Connection, *, to: str = NEWEST) -> None:
    """Run the migrations that are missing up to one, in the transaction of `connection`.

    Raises:
        NotStored: the database belongs to a later release.
    """
    # It tells of each of its own parts and steps, which hides what a first start has to say.
    logging.getLogger("alembic").setLevel(logging.WARNING)
    from alembic import command  # noqa: PLC0415 - a tenth of a second that a database of today does without
    from alembic.util import CommandError  # noqa: PLC0415 - likewise

    config = _configured(connection)
    present = inspect(connection).get_table_names()
    try:
        if "events" in present and VERSION_TABLE not in present:
            command.stamp(config, FIRST)
        command.upgrade(config, to)
    except CommandError as error:
        raise NotStored(
            f"its tables are of a later release of quizroom than this one; use that release ({error})"
        ) from error
    if "events" in present:
        logger.info("brought the tables up to date", extra={"migration": to})


def _configured(connection: Connection) -> "Config":
    from alembic.config import Config  # noqa: PLC0415 - as above

    config = Config()
    config.set_main_option("script_location", str(Path(__file__).parent / "migrations"))
    config.attributes["connection"] = connection
    return config


def _is_up_to_date(connection: Connection) -> bool:
    return release_of(connection) == "this"


def _wait_for_others(connection: Connection) -> None:
    if connection.dialect.name == "postgresql":
        connection.execute(select(func.pg_advisory_xact_lock(LOCK)))
    else:
        connection.exec_driver_sql(f"PRAGMA busy_timeout={PATIENCE_MS}")
        # Without this the driver would commit after each change of a table.
        connection.exec_driver_sql("BEGIN IMMEDIATE")
