"""The tables. The log is the truth; `rooms` is an index over it, written in the same transaction."""

from sqlalchemy import Column, DateTime, Index, Integer, LargeBinary, MetaData, String, Table

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
)

host_tokens = Table(
    "host_tokens",
    metadata,
    Column("token_hash", String(64), primary_key=True),
    Column("host", String(64), nullable=False),
    Column("made_at", DateTime(timezone=True), nullable=False),
)

heartbeat = Table(
    "heartbeat",
    metadata,
    Column("id", Integer, primary_key=True, autoincrement=False),
    Column("at", DateTime(timezone=True), nullable=False),
)
