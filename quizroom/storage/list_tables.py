"""The table behind the list of reviews: an index over the log, and what the list alone knows."""

from sqlalchemy import Boolean, Column, DateTime, Index, Integer, String, Table

from quizroom.storage.tables import metadata

listed_reviews = Table(
    "listed_reviews",
    metadata,
    Column("room", String(64), primary_key=True),
    Column("title", String(200), nullable=False),
    Column("course", String(200), nullable=False),
    Column("rounds", Integer, nullable=False),
    Column("planned_at", DateTime(timezone=True)),
    Column("opens_itself", Boolean, nullable=False),
    Column("archived_at", DateTime(timezone=True)),
    Index("ix_listed_reviews_planned_at", "planned_at"),
)
"""Reviews of hosts; those of study groups are on no list."""
