"""The tables. The log is the truth; `rooms` is an index over it, written in the same transaction."""

from sqlalchemy import (
    Boolean,
    Column,
    DateTime,
    ForeignKey,
    Index,
    Integer,
    LargeBinary,
    MetaData,
    String,
    Table,
)

NAMING = {
    "ix": "ix_%(column_0_label)s",
    "uq": "uq_%(table_name)s_%(column_0_name)s",
    "ck": "ck_%(table_name)s_%(constraint_name)s",
    "fk": "fk_%(table_name)s_%(column_0_name)s_%(referred_table_name)s",
    "pk": "pk_%(table_name)s",
}

metadata = MetaData(naming_convention=NAMING)

events = Table(
    "events",
    metadata,
    Column("room", String(64), primary_key=True),
    Column("version", Integer, primary_key=True, autoincrement=False),
    Column("body", LargeBinary, nullable=False),
)

rooms = Table(
    "rooms",
    metadata,
    Column("room", String(64), primary_key=True),
    Column("host", String(64), nullable=False),
    Column("prepared_at", DateTime(timezone=True), nullable=False),
    Column("door_code", String(16)),
    Column("finished_at", DateTime(timezone=True)),
    Index("ix_rooms_door_code", "door_code"),
    Index("ix_rooms_host", "host"),
)

entry_keys = Table(
    "entry_keys",
    metadata,
    Column("key_hash", String(64), primary_key=True),
    Column("expires_at", DateTime(timezone=True), nullable=False),
    Column("host", String(64), nullable=False, server_default="owner"),
)

host_tokens = Table(
    "host_tokens",
    metadata,
    Column("token_hash", String(64), primary_key=True),
    Column("host", String(64), nullable=False),
    Column("made_at", DateTime(timezone=True), nullable=False),
)

class_reviews = Table(
    "class_reviews",
    metadata,
    Column("room", String(64), primary_key=True),
    Column("course", String(64), nullable=False),
    Column("version", Integer, nullable=False),
    Index("ix_class_reviews_course", "course"),
)
"""Reviews whose answers were counted, and up to which version of their log; the counts can be made anew."""

class_asks = Table(
    "class_asks",
    metadata,
    Column("room", String(64), primary_key=True),
    Column("ask", String(250), primary_key=True),
    Column("typed", Boolean, primary_key=True),
    Column("answered", Integer, nullable=False),
    Column("right", Integer, nullable=False),
)

class_choices = Table(
    "class_choices",
    metadata,
    Column("room", String(64), primary_key=True),
    Column("ask", String(250), primary_key=True),
    Column("typed", Boolean, primary_key=True),
    Column("concept", String(250), primary_key=True),
    Column("chosen", Integer, nullable=False),
)
"""What was wrongly chosen how often, never by whom."""

heartbeat = Table(
    "heartbeat",
    metadata,
    Column("id", Integer, primary_key=True, autoincrement=False),
    Column("at", DateTime(timezone=True), nullable=False),
)

players = Table(
    "players",
    metadata,
    Column("player", String(64), primary_key=True),  # SHA-256 of the player's own key, in hex
    Column("since", DateTime(timezone=True), nullable=False),
    Column("seen_at", DateTime(timezone=True), nullable=False),
)
"""Whatever is kept about a player refers to this table, directly or through another: what is erased
and exported with a player is found by these references."""

player_seats = Table(
    "player_seats",
    metadata,
    Column("room", String(64), primary_key=True),
    Column("seat", String(64), primary_key=True),
    Column("player", String(64), ForeignKey("players.player"), nullable=False),
    Index("ix_player_seats_player", "player"),
)
"""Whose history a seat belongs to: like `rooms` an index over the log."""
