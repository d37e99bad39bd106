"""The tables of hosts' own items and their pictures."""

from sqlalchemy import Column, DateTime, Index, Integer, LargeBinary, String, Table

from quizroom.storage.tables import metadata

own_items = Table(
    "own_items",
    metadata,
    Column("item", String(64), primary_key=True),
    Column("host", String(64), nullable=False),
    Column("changed_at", DateTime(timezone=True), nullable=False),
    Column("picture", String(64)),
    Column("body", LargeBinary, nullable=False),
    Index("ix_own_items_host", "host"),
    Index("ix_own_items_picture", "picture"),
)
"""The library: `body` is the item as it was last saved, `picture` the one that it shows."""

pictures = Table(
    "pictures",
    metadata,
    Column("name", String(64), primary_key=True),
    Column("host", String(64), nullable=False),
    Column("made_at", DateTime(timezone=True), nullable=False),
    Column("width", Integer, nullable=False),
    Column("height", Integer, nullable=False),
    Column("body", LargeBinary, nullable=False),
    Index("ix_pictures_host", "host"),
)
"""Pictures never change: another picture has another name. They lie in the database so that every worker
has them, and a backup too."""

picture_rooms = Table(
    "picture_rooms",
    metadata,
    Column("name", String(64), primary_key=True),
    Column("room", String(64), primary_key=True),
    Index("ix_picture_rooms_room", "room"),
)
"""In which reviews a picture is: like `rooms` an index over the log. It may come from another server, so it
refers to no row of `pictures`."""
