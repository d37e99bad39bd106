"""A row in every table of a database of any release, made from the tables as they are."""

from datetime import date
from typing import Any

from sqlalchemy import Boolean, Column, Connection, Date, DateTime, Integer, LargeBinary, MetaData, select

from quizroom.storage.event_codec import write_event
from tests.room.samples import NOON
from tests.storage.entries import laid_out

ROOM = "room"
"""Columns of text hold their own name, so that rows refer to each other: the room of each is "room"."""


def tables_of(connection: Connection) -> MetaData:
    """The tables as the database describes them."""
    described = MetaData()
    described.reflect(connection, only=lambda name, _: name != "alembic_version")
    return described


def fill(connection: Connection) -> dict[str, list[dict[str, Any]]]:
    """Put a row into each table; all rows by table."""
    described = tables_of(connection)
    for table in described.sorted_tables:
        row = {column.name: _value(column) for column in table.columns}
        if table.name == "events":
            row["body"] = write_event(laid_out(ROOM).event)
        connection.execute(table.insert().values(row))
    return held(connection, described)


def held(connection: Connection, described: MetaData) -> dict[str, list[dict[str, Any]]]:
    """The rows of these tables, with these columns, in the order of their first column."""
    return {
        table.name: [
            {str(name): value for name, value in row.items()}
            for row in connection.execute(select(table).order_by(*table.primary_key.columns)).mappings()
        ]
        for table in described.sorted_tables
    }


def _value(column: Column[Any]) -> Any:
    match column.type:
        case Boolean():
            return True
        case Integer():
            return 1
        case DateTime():
            return NOON
        case Date():
            return date(2031, 10, 20)
        case LargeBinary():
            return b"\x00\xff of " + column.name.encode()
        case _:
            return column.name
