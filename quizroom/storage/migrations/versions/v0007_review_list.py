"""The list of reviews: titles to be found by, plans, and what was put away."""

import json
from typing import Any

import sqlalchemy as sa
from alembic import op

revision = "0007"
down_revision = "0006"


def upgrade() -> None:
    """Make the table, and put every review of a host on it."""
    connection = op.get_bind()
    if "listed_reviews" not in sa.inspect(connection).get_table_names():
        op.create_table(
            "listed_reviews",
            sa.Column("room", sa.String(64), nullable=False),
            sa.Column("title", sa.String(200), nullable=False),
            sa.Column("course", sa.String(200), nullable=False),
            sa.Column("rounds", sa.Integer(), nullable=False),
            sa.Column("planned_at", sa.DateTime(timezone=True)),
            sa.Column("opens_itself", sa.Boolean(), nullable=False),
            sa.Column("archived_at", sa.DateTime(timezone=True)),
            sa.PrimaryKeyConstraint("room", name="pk_listed_reviews"),
        )
        op.create_index("ix_listed_reviews_planned_at", "listed_reviews", ["planned_at"])
    list_what_is_there(connection)


def list_what_is_there(connection: sa.Connection) -> None:
    """Put every review of a host on the list that is not on it."""
    rooms, events, listed = _tables()
    query = (
        sa.select(rooms.c.room, events.c.body)
        .join(events, sa.and_(events.c.room == rooms.c.room, events.c.version == 1))
        .where(rooms.c.host != "", rooms.c.room.not_in(sa.select(listed.c.room)))
    )
    rows = [_row(room, bytes(body)) for room, body in connection.execute(query)]
    if rows:
        connection.execute(sa.insert(listed), rows)


def _row(room: str, body: bytes) -> dict[str, Any]:
    first = json.loads(body)["event"]
    return {
        "room": room,
        "title": str(first["plan"]["title"])[:200],
        "course": str(first["plan"]["course_title"])[:200],
        "rounds": len(first["items"]),
        "opens_itself": False,
    }


def _tables() -> tuple[sa.TableClause, sa.TableClause, sa.TableClause]:
    rooms = sa.table("rooms", sa.column("room"), sa.column("host"))
    events = sa.table("events", sa.column("room"), sa.column("version"), sa.column("body"))
    names = ("room", "title", "course", "rounds", "opens_itself")
    listed = sa.table("listed_reviews", *map(sa.column, names))
    return rooms, events, listed
