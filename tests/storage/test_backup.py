"""A backup is whole, consistent while the store is written to, and comes back in full or not at all."""

import gzip
import io
from datetime import UTC, datetime
from pathlib import Path

import orjson
import pytest
from sqlalchemy import Engine, insert, select

from quizroom.storage.accounts import SqlAccounts
from quizroom.storage.addresses import usable_database_url
from quizroom.storage.backup import (
    BadBackup,
    DatabaseInUse,
    Kept,
    kept_tables,
    restore_backup,
    write_backup,
)
from quizroom.storage.database import open_database
from quizroom.storage.event_log import SqlEventLog
from quizroom.storage.schema import metadata
from quizroom.storage.tables import events
from tests.services import PostgreSql
from tests.storage.databases import OpenHere
from tests.storage.entries import entry, laid_out, opened
from tests.storage.filled import fill

NOW = datetime(2031, 10, 20, 9, 30, tzinfo=UTC)


@pytest.fixture
def elsewhere(tmp_path: Path) -> Engine:
    """An empty database of another server."""
    return open_database(f"sqlite:///{tmp_path / 'elsewhere.sqlite'}")


@pytest.fixture
def used(open_here: OpenHere) -> Engine:
    """A database with a review, a door and a host."""
    engine = open_here()
    SqlEventLog(engine).append([laid_out("r1", at=NOW), opened("r1", "CDFHJ")])
    SqlAccounts(engine).add_host_token("a" * 64, "owner", NOW)
    SqlAccounts(engine).add_entry_key("b" * 64, "owner", NOW)
    return engine


def written(engine: Engine) -> bytes:
    out = io.BytesIO()
    write_backup(engine, out, now=NOW, program="test")
    return out.getvalue()


def restored(engine: Engine, backup: bytes) -> Kept:
    return restore_backup(engine, io.BytesIO(backup))


def held(engine: Engine) -> dict[str, list[tuple[object, ...]]]:
    with engine.connect() as connection:
        return {
            table.name: sorted(tuple(row) for row in connection.execute(select(table)))
            for table in kept_tables()
        }


def rewritten(backup: bytes, change: bytes, by: bytes) -> bytes:
    plain = gzip.decompress(backup)
    assert change in plain
    return gzip.compress(plain.replace(change, by))


def test_what_comes_back_is_what_was_there(used: Engine, elsewhere: Engine) -> None:
    kept = restored(elsewhere, written(used))
    assert held(elsewhere) == held(used)
    assert kept.rows == {"events": 2, "rooms": 1, "listed_reviews": 1, "host_tokens": 1}
    assert SqlEventLog(elsewhere).read("r1") == SqlEventLog(used).read("r1")
    assert SqlEventLog(elsewhere).room_of_door("CDFHJ") == "r1"


def test_every_table_but_those_of_a_day_is_kept() -> None:
    assert {table.name for table in kept_tables()} == metadata.tables.keys() - {"entry_keys", "heartbeat"}


def test_one_time_keys_are_not_carried_away(used: Engine) -> None:
    assert b"b" * 64 not in gzip.decompress(written(used))


def test_what_is_written_meanwhile_is_all_there_or_not_at_all(used: Engine, elsewhere: Engine) -> None:
    class WritesWhileBeingWritten(io.BytesIO):
        """Each time the backup gives it something, the review goes on."""

        version = 2

        def write(self, data: object) -> int:
            WritesWhileBeingWritten.version += 1
            SqlEventLog(used).append([entry("r1", WritesWhileBeingWritten.version)])
            SqlEventLog(used).append([laid_out(f"later {WritesWhileBeingWritten.version}")])
            return super().write(data)  # type: ignore[arg-type] # a buffer, whatever kind

    out = WritesWhileBeingWritten()
    write_backup(used, out, now=NOW, program="test")
    assert WritesWhileBeingWritten.version > 2
    restored(elsewhere, out.getvalue())
    rooms_with_events = {room for room, *_ in held(elsewhere)["events"]}
    assert rooms_with_events == {room for room, *_ in held(elsewhere)["rooms"]}
    versions = [version for room, version, *_ in held(elsewhere)["events"] if room == "r1"]
    assert versions == list(range(1, len(versions) + 1))


def test_every_table_goes_to_postgresql_and_back(
    engine: Engine, elsewhere: Engine, postgresql: PostgreSql
) -> None:
    with engine.begin() as connection:
        fill(connection)
    service = open_database(usable_database_url(postgresql.new_database()))
    assert restored(service, written(engine)).rows.keys() == {table.name for table in kept_tables()}
    restored(elsewhere, written(service))
    service.dispose()
    assert held(elsewhere) == held(engine)
    assert [row[-1] for row in held(elsewhere)["pictures"]] == [b"\x00\xff of body"]


def test_a_database_in_use_is_left_as_it_is(used: Engine, open_here: OpenHere) -> None:
    before = held(used)
    with pytest.raises(DatabaseInUse, match="2 rows of events"):
        restored(open_here(), written(used))
    assert held(used) == before


@pytest.mark.parametrize("share", [0.1, 0.5, 0.95])
def test_a_file_that_was_cut_off_restores_nothing(used: Engine, elsewhere: Engine, share: float) -> None:
    backup = written(used)
    with pytest.raises(BadBackup):
        restored(elsewhere, backup[: int(len(backup) * share)])
    assert not any(held(elsewhere).values())


def test_a_file_without_its_last_line_restores_nothing(used: Engine, elsewhere: Engine) -> None:
    lines = gzip.decompress(written(used)).splitlines(keepends=True)
    with pytest.raises(BadBackup, match="cut off"):
        restored(elsewhere, gzip.compress(b"".join(lines[:-1])))
    assert not any(held(elsewhere).values())


def test_a_file_with_a_row_too_few_restores_nothing(used: Engine, elsewhere: Engine) -> None:
    lines = gzip.decompress(written(used)).splitlines(keepends=True)
    with pytest.raises(BadBackup, match="counts"):
        restored(elsewhere, gzip.compress(b"".join(lines[:1] + lines[2:])))
    assert not any(held(elsewhere).values())


def test_what_this_version_does_not_know_is_named(used: Engine, elsewhere: Engine) -> None:
    backup = written(used)
    with pytest.raises(BadBackup, match=r"benches, which this version"):
        restored(elsewhere, rewritten(backup, b'"table":"rooms"', b'"table":"benches"'))
    with pytest.raises(BadBackup, match=r"rooms\.colour"):
        restored(elsewhere, rewritten(backup, b'"door_code"', b'"colour"'))
    with pytest.raises(BadBackup, match="newer quizroom"):
        restored(elsewhere, rewritten(backup, b'"version":1,"made_at"', b'"version":9,"made_at"'))
    assert not any(held(elsewhere).values())


@pytest.mark.parametrize("file", [b"", b"not gzip", gzip.compress(b"{}\n"), gzip.compress(b"\xff\n")])
def test_any_other_file_is_refused(elsewhere: Engine, file: bytes) -> None:
    with pytest.raises(BadBackup):
        restored(elsewhere, file)


def test_many_rows_come_back_in_their_order(open_here: OpenHere, elsewhere: Engine) -> None:
    engine = open_here()
    body = orjson.dumps({"some": "event"})
    with engine.begin() as connection:
        rows = [{"room": "r", "version": number, "body": body} for number in range(1, 1802)]
        connection.execute(insert(events), rows)
    assert restored(elsewhere, written(engine)).rows == {"events": 1801}
    assert held(elsewhere) == held(engine)
