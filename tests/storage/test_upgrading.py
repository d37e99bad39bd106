"""From every earlier release to today's tables: nothing is lost, and all roads lead to the same tables."""

import io
import logging
import sqlite3
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import pytest
from alembic.autogenerate import compare_metadata
from alembic.runtime.migration import MigrationContext
from alembic.script import ScriptDirectory
from sqlalchemy import Engine, create_engine, inspect, text

from quizroom.marking import marks_of_room
from quizroom.room.folding import replay
from quizroom.service.ports import NotStored
from quizroom.storage.accounts import SqlAccounts, SqlHeartbeat
from quizroom.storage.addresses import usable_database_url
from quizroom.storage.backup import NOT_KEPT, restore_backup, write_backup
from quizroom.storage.database import open_as_it_is, open_database
from quizroom.storage.event_log import SqlEventLog
from quizroom.storage.hosts import SqlHosts
from quizroom.storage.schema import metadata
from quizroom.storage.upgrading import FIRST, NEWEST, migrate, release_of
from tests.room.samples import after
from tests.services import PostgreSql
from tests.storage.databases import url_in
from tests.storage.filled import ROOM, fill, held, tables_of

FIRST_RELEASE = Path(__file__).with_name("first_release.sql")
"""What the first release had written after one round of a review, dumped by sqlite3."""
SCRIPTS = Path(__file__).resolve().parents[2] / "quizroom" / "storage" / "migrations"
RELEASES = sorted(script.revision for script in ScriptDirectory(str(SCRIPTS)).walk_revisions())


@pytest.fixture(params=["SQLite", "PostgreSQL"])
def url(request: pytest.FixtureRequest, tmp_path: Path) -> str:
    """The address of an empty database of each kind."""
    if request.param == "SQLite":
        return url_in(tmp_path)
    cluster: PostgreSql = request.getfixturevalue("postgresql")
    return usable_database_url(cluster.new_database())


@pytest.fixture
def bare(url: str) -> Iterator[Engine]:
    """The same without any tables."""
    engine = create_engine(url)
    yield engine
    engine.dispose()


def differences(engine: Engine) -> list[object]:
    """What alembic would change to get from the database to the tables in the source."""
    with engine.connect() as connection:
        context = MigrationContext.configure(connection, opts={"compare_type": True})
        return list(compare_metadata(context, metadata))


def version(engine: Engine) -> str:
    with engine.connect() as connection:
        found: str = connection.execute(text("SELECT version_num FROM alembic_version")).scalar_one()
        return found


def test_the_migrations_alone_make_the_tables_that_the_source_describes(bare: Engine) -> None:
    with bare.begin() as connection:
        migrate(connection)
    assert differences(bare) == []
    assert version(bare) == NEWEST


def test_the_newest_migration_is_the_one_that_is_waited_for() -> None:
    scripts = ScriptDirectory(str(SCRIPTS))
    assert scripts.get_heads() == [NEWEST]
    assert scripts.get_bases() == [FIRST]


def test_a_database_of_the_first_release_keeps_all_it_held(
    tmp_path: Path, caplog: pytest.LogCaptureFixture
) -> None:
    caplog.set_level(logging.INFO, logger="quizroom")
    with sqlite3.connect(tmp_path / "quizroom.sqlite") as old:
        old.executescript(FIRST_RELEASE.read_text("utf-8"))
    old.close()
    engine = open_database(url_in(tmp_path))
    assert version(engine) == NEWEST
    assert differences(engine) == []
    assert caplog.messages == ["brought the tables up to date"]
    log = SqlEventLog(engine)
    room = replay(log.read(log.room_of_door("CDFHJ") or ""))
    assert room is not None
    assert room.phase == "closed"
    marks = marks_of_room(room).totals
    assert {player: total.marks for player, total in marks.items()} == {"ada": 1, "bo": 0}
    assert SqlAccounts(engine).host_of_token("t" * 64, made_after=after(-1)) == "owner"
    assert SqlAccounts(engine).spend_entry_key("k" * 64, after(1)) == "owner"
    assert [(host.id, host.role) for host in SqlHosts(engine).all()] == [("owner", "owner")]
    assert SqlHeartbeat(engine).last_beat() == after(5)
    engine.dispose()


@pytest.mark.parametrize("release", RELEASES)
def test_a_database_of_every_earlier_release_keeps_every_row(bare: Engine, url: str, release: str) -> None:
    with bare.begin() as connection:
        migrate(connection, to=release)
    with bare.begin() as connection:
        described, before = tables_of(connection), fill(connection)
        assert release_of(connection) == ("this" if release == NEWEST else "earlier")
    open_database(url).dispose()
    with bare.connect() as connection:
        assert held(connection, described) == before
        listed = connection.execute(text("SELECT room FROM listed_reviews")).scalars()
        assert list(listed) == [ROOM]
    assert (version(bare), differences(bare)) == (NEWEST, [])


@pytest.mark.parametrize("url", ["SQLite"], indirect=True)
@pytest.mark.parametrize("release", RELEASES[:-1])
def test_a_backup_of_an_earlier_release_changes_nothing_and_fits_todays_tables(
    bare: Engine, url: str, tmp_path: Path, release: str
) -> None:
    with bare.begin() as connection:
        migrate(connection, to=release)
    with bare.begin() as connection:
        described, before = tables_of(connection), fill(connection)
    made, engine = io.BytesIO(), open_as_it_is(url)
    write_backup(engine, made, now=after(1), program="test")
    engine.dispose()
    assert version(bare) == release
    made.seek(0)
    other = open_database(f"sqlite:///{tmp_path / 'other.sqlite'}")
    restore_backup(other, made)
    with other.connect() as connection:
        there = held(connection, described)
    other.dispose()
    assert {name: len(rows) for name, rows in there.items() if name not in NOT_KEPT} == {
        name: len(rows) for name, rows in before.items() if name not in NOT_KEPT
    }


def test_no_backup_is_made_of_a_later_release(bare: Engine, url: str) -> None:
    open_database(url).dispose()
    with bare.begin() as connection:
        connection.execute(text("UPDATE alembic_version SET version_num = '9999'"))
    with pytest.raises(NotStored, match="later release"):
        write_backup(bare, io.BytesIO(), now=after(1), program="test")


@pytest.mark.parametrize("made", ["first", "all"])
def test_tables_made_without_a_migration_are_recognised(bare: Engine, url: str, made: str) -> None:
    first = ("events", "rooms", "entry_keys", "host_tokens", "heartbeat")
    metadata.create_all(bare, [metadata.tables[name] for name in first] if made == "first" else None)
    engine = open_database(url)
    assert version(engine) == NEWEST
    assert differences(engine) == []
    engine.dispose()


def test_opening_again_changes_nothing(url: str) -> None:
    for _ in range(2):
        engine = open_database(url)
        assert (version(engine), differences(engine)) == (NEWEST, [])
        engine.dispose()


def test_programs_that_start_together_make_the_tables_once(url: str) -> None:
    with ThreadPoolExecutor(4) as together:
        engines = list(together.map(lambda _: open_database(url), range(4)))
    assert {version(engine) for engine in engines} == {NEWEST}
    assert differences(engines[0]) == []
    for engine in engines:
        engine.dispose()


def test_a_database_of_a_later_release_is_left_alone(bare: Engine, url: str) -> None:
    open_database(url).dispose()
    with bare.begin() as connection:
        connection.execute(text("UPDATE alembic_version SET version_num = '9999'"))
    with pytest.raises(NotStored, match="later release"):
        open_database(url)
    assert version(bare) == "9999"


def test_an_upgrade_that_breaks_off_leaves_nothing_behind(bare: Engine, url: str) -> None:
    with bare.begin() as connection:
        # A view in the place of the last table: the tables before it have been made when it fails.
        connection.execute(text("CREATE VIEW look_sets AS SELECT 1 AS id"))
    with pytest.raises(NotStored):
        open_database(url)
    assert inspect(bare).get_table_names() == []
