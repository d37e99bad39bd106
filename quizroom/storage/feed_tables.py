"""The table of calendar feeds."""

from sqlalchemy import Column, DateTime, ForeignKey, LargeBinary, String, Table

from quizroom.storage.tables import metadata

calendar_feeds = Table(
    "calendar_feeds",
    metadata,
    Column("player", String(64), ForeignKey("players.player"), primary_key=True),
    Column("secret_hash", String(64), nullable=False, unique=True),
    Column("id", String(64), nullable=False),
    Column("at", String(8), nullable=False),
    Column("told", LargeBinary, nullable=False),
    Column("made_at", DateTime(timezone=True), nullable=False),
)
