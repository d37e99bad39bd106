"""Class rosters, their entries, and which reviews are for credit."""

import sqlalchemy as sa
from alembic import op

revision = "0005"
down_revision = "0004"


def upgrade() -> None:
    """Make the tables; no earlier review was for credit."""
    present = set(sa.inspect(op.get_bind()).get_table_names())
    for name, make in TABLES.items():
        if name not in present:
            make()


def _rosters() -> None:
    op.create_table(
        "rosters",
        sa.Column("roster", sa.String(64), nullable=False),
        sa.Column("host", sa.String(64), nullable=False),
        sa.Column("name", sa.String(120), nullable=False),
        sa.Column("created_at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("changed_at", sa.DateTime(timezone=True), nullable=False),
        sa.PrimaryKeyConstraint("roster", name="pk_rosters"),
    )
    op.create_index("ix_rosters_host", "rosters", ["host"])


def _roster_entries() -> None:
    op.create_table(
        "roster_entries",
        sa.Column("entry", sa.String(64), nullable=False),
        sa.Column("roster", sa.String(64), nullable=False),
        sa.Column("place", sa.Integer(), nullable=False),
        sa.Column("institutional_id", sa.String(64), nullable=False),
        sa.Column("id_key", sa.String(64), nullable=False),
        sa.Column("name", sa.String(120), nullable=False),
        sa.Column("section", sa.String(60), nullable=False),
        sa.PrimaryKeyConstraint("entry", name="pk_roster_entries"),
        sa.ForeignKeyConstraint(["roster"], ["rosters.roster"], name="fk_roster_entries_roster_rosters"),
        sa.UniqueConstraint("roster", "id_key", name="uq_roster_entries_roster"),
    )


def _roster_reviews() -> None:
    op.create_table(
        "roster_reviews",
        sa.Column("room", sa.String(64), nullable=False),
        sa.Column("roster", sa.String(64), nullable=False),
        sa.PrimaryKeyConstraint("room", name="pk_roster_reviews"),
    )
    op.create_index("ix_roster_reviews_roster", "roster_reviews", ["roster"])


TABLES = {
    "rosters": _rosters,
    "roster_entries": _roster_entries,
    "roster_reviews": _roster_reviews,
}
