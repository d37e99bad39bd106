"""Backups: the whole database as one file, read back into an empty database of any kind.

The file is gzip (RFC 1952) over lines of JSON (RFC 8259): a head, one line a row, and an end with
the counts, by which a file that was cut off is known. The database is read inside one transaction,
so that all belongs to one moment while the server goes on.
"""

import base64
import gzip
from collections import Counter
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import date, datetime
from typing import IO, Any

import orjson
from sqlalchemy import Connection, Date, DateTime, Engine, LargeBinary, Table, func, insert, inspect, select
from sqlalchemy.exc import SQLAlchemyError

from quizroom.service.ports import NotStored
from quizroom.storage.moments import in_utc
from quizroom.storage.schema import metadata
from quizroom.storage.upgrading import release_of

FORMAT = "quizroom backup"
VERSION = 1
NOT_KEPT = frozenset({"entry_keys", "heartbeat"})
"""One-time keys and signs of life mean nothing on another day."""
ROWS_AT_A_TIME = 500


class BadBackup(Exception):
    """The file is no backup, or not a whole one; the text says what is wrong."""


class DatabaseInUse(Exception):
    """The database holds data already; the text says how many rows of what."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Kept:
    """What a backup holds: rows by table."""

    made_at: str
    rows: Mapping[str, int]


def write_backup(engine: Engine, out: IO[bytes], *, now: datetime, program: str) -> Kept:
    """Write all that is stored to `out`.

    Args:
        engine: the database; it may be served from meanwhile. Nothing in it is changed.
        out: where to.
        now: noted in the head.
        program: version of the program, noted in the head.

    Raises:
        NotStored: the database cannot be read, or is of a later release.
    """
    counted: Counter[str] = Counter()
    head = {"format": FORMAT, "version": VERSION, "made_at": now.isoformat(), "program": program}
    try:
        with gzip.open(out, "wb") as file, _snapshot(engine) as connection:
            file.write(_line(head))
            for table, columns in _held_columns(connection):
                for row in _rows(connection, table, columns):
                    file.write(_line({"table": str(table.name), "row": row}))
                    counted[str(table.name)] += 1
            file.write(_line({"end": dict(counted)}))
    except SQLAlchemyError as error:
        raise NotStored(str(error)) from error
    return Kept(made_at=now.isoformat(), rows=dict(counted))


def restore_backup(engine: Engine, source: IO[bytes]) -> Kept:
    """Put a backup into an empty database, all of it or nothing.

    Raises:
        BadBackup: it is no backup, was cut off, or holds what this program does not know.
        DatabaseInUse: the database is not empty.
        NotStored: the database refuses.
    """
    try:
        with engine.begin() as connection:
            _must_be_empty(connection)
            kept = _restore(connection, _lines(source))
            _list_reviews(connection)
            return kept
    except SQLAlchemyError as error:
        raise NotStored(str(error)) from error


def kept_tables() -> list[Table]:
    """The tables that a backup holds, those first that others refer to."""
    return [table for table in metadata.sorted_tables if table.name not in NOT_KEPT]


def _list_reviews(connection: Connection) -> None:
    """Put reviews on the list that are from before there was one."""
    from quizroom.storage.migrations.versions import v0007_review_list  # noqa: PLC0415 - brings alembic

    v0007_review_list.list_what_is_there(connection)


def _snapshot(engine: Engine) -> Connection:
    if engine.dialect.name == "sqlite":
        connection = engine.connect()
        # The driver begins a transaction at the first write only; reading at one moment needs one as well.
        connection.exec_driver_sql("BEGIN")
        return connection
    return engine.connect().execution_options(isolation_level="REPEATABLE READ")


def _held_columns(connection: Connection) -> Iterator[tuple[Table, list[str]]]:
    """What of the kept tables this database has: one of an earlier release is read as it is."""
    if release_of(connection) == "later":
        raise NotStored("its tables are of a later release of quizroom than this one; use that release")
    inspector = inspect(connection)
    present = set(inspector.get_table_names())
    for table in kept_tables():
        if table.name in present:
            yield table, [str(column["name"]) for column in inspector.get_columns(table.name)]


def _rows(connection: Connection, table: Table, columns: list[str]) -> Iterator[dict[str, Any]]:
    query = select(*(table.columns[name] for name in columns))
    for row in connection.execution_options(yield_per=ROWS_AT_A_TIME).execute(query):
        yield {name: _plain(value) for name, value in zip(columns, row, strict=True) if value is not None}


def _plain(value: Any) -> Any:
    match value:
        case bytes():
            return base64.b64encode(value).decode("ascii")
        case datetime():
            return in_utc(value).isoformat()
        case _:
            return value


def _line(value: Any) -> bytes:
    return orjson.dumps(value, option=orjson.OPT_APPEND_NEWLINE)


def _lines(source: IO[bytes]) -> Iterator[dict[str, Any]]:
    try:
        with gzip.open(source, "rb") as file:
            for line in file:
                yield orjson.loads(line)
    except (OSError, EOFError, orjson.JSONDecodeError) as error:
        raise BadBackup(f"The file cannot be read to its end: {error}.") from error


def _must_be_empty(connection: Connection) -> None:
    for table in kept_tables():
        held = connection.execute(select(func.count()).select_from(table)).scalar_one()
        if held:
            raise DatabaseInUse(f"{held} rows of {table.name}")


def _restore(connection: Connection, lines: Iterator[dict[str, Any]]) -> Kept:
    head = next(lines, {})
    if head.get("format") != FORMAT:
        raise BadBackup("The file is not a backup of quizroom.")
    if head.get("version") != VERSION:
        raise BadBackup("The file was made by a newer quizroom. Install that version, or a later one.")
    counted: Counter[str] = Counter()
    waiting: list[dict[str, Any]] = []
    table: Table | None = None
    for line in lines:
        named = _table_of(line)
        row = _read(named, line["row"]) if named is not None else {}
        if waiting and (
            named is not table or len(waiting) >= ROWS_AT_A_TIME or row.keys() != waiting[0].keys()
        ):
            _put(connection, table, waiting)
            waiting = []
        if named is None:
            return _ended(line, counted, made_at=str(head["made_at"]))
        table = named
        waiting.append(row)
        counted[table.name] += 1
    raise BadBackup("The file ends too early: it was cut off while it was written or copied.")


def _table_of(line: dict[str, Any]) -> Table | None:
    if "end" in line:
        return None
    table = metadata.tables.get(str(line.get("table")))
    if table is None:
        raise BadBackup(f"The file holds {line.get('table')}, which this version of quizroom does not know.")
    return table


def _read(table: Table, row: dict[str, Any]) -> dict[str, Any]:
    unknown = row.keys() - table.columns.keys()
    if unknown:
        raise BadBackup(f"The file holds {table.name}.{min(unknown)}, which this version does not know.")
    # What an older backup does not hold is left to the column's default.
    return {name: _typed(table.columns[name].type, value) for name, value in row.items()}


def _typed(kind: Any, value: Any) -> Any:
    match kind:
        case LargeBinary():
            return base64.b64decode(value)
        case DateTime():
            return datetime.fromisoformat(value)
        case Date():
            return date.fromisoformat(value)
        case _:
            return value


def _put(connection: Connection, table: Table | None, rows: list[dict[str, Any]]) -> None:
    if table is not None:
        connection.execute(insert(table), rows)


def _ended(line: dict[str, Any], counted: Counter[str], *, made_at: str) -> Kept:
    if line["end"] != dict(counted):
        raise BadBackup("The counts at the end of the file do not fit what it holds.")
    return Kept(made_at=made_at, rows=dict(counted))
