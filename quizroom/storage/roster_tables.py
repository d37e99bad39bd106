"""The tables of class rosters. Names and institutional ids are in `roster_entries` and nowhere else."""

from sqlalchemy import Column, DateTime, ForeignKey, Index, Integer, String, Table, UniqueConstraint

from quizroom.storage.tables import metadata

rosters = Table(
    "rosters",
    metadata,
    Column("roster", String(64), primary_key=True),
    Column("host", String(64), nullable=False),
    Column("name", String(120), nullable=False),
    Column("created_at", DateTime(timezone=True), nullable=False),
    Column("changed_at", DateTime(timezone=True), nullable=False),
    Index("ix_rosters_host", "host"),
)

roster_entries = Table(
    "roster_entries",
    metadata,
    Column("entry", String(64), primary_key=True),
    Column("roster", String(64), ForeignKey("rosters.roster"), nullable=False),
    Column("place", Integer, nullable=False),
    Column("institutional_id", String(64), nullable=False),
    Column("id_key", String(64), nullable=False),  # the same as `folded_id` sees it
    Column("name", String(120), nullable=False),
    Column("section", String(60), nullable=False),
    UniqueConstraint("roster", "id_key"),
)

roster_reviews = Table(
    "roster_reviews",
    metadata,
    Column("room", String(64), primary_key=True),
    Column("roster", String(64), nullable=False),
    Index("ix_roster_reviews_roster", "roster"),
)
"""Which reviews are for credit, and by which roster: like `rooms` an index over the log."""
