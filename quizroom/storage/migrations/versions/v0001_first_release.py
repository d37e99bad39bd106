"""The tables of the first release, which made them without a migration."""

import sqlalchemy as sa
from alembic import op

revision = "0001"
down_revision = None


def upgrade() -> None:
    """Make the log, its index, and the keys of hosts."""
    op.create_table(
        "events",
        sa.Column("room", sa.String(64), nullable=False),
        sa.Column("version", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("body", sa.LargeBinary(), nullable=False),
        sa.PrimaryKeyConstraint("room", "version", name="pk_events"),
    )
    op.create_table(
        "rooms",
        sa.Column("room", sa.String(64), nullable=False),
        sa.Column("host", sa.String(64), nullable=False),
        sa.Column("prepared_at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("door_code", sa.String(16)),
        sa.Column("finished_at", sa.DateTime(timezone=True)),
        sa.PrimaryKeyConstraint("room", name="pk_rooms"),
    )
    op.create_index("ix_rooms_door_code", "rooms", ["door_code"])
    op.create_index("ix_rooms_host", "rooms", ["host"])
    op.create_table(
        "entry_keys",
        sa.Column("key_hash", sa.String(64), nullable=False),
        sa.Column("expires_at", sa.DateTime(timezone=True), nullable=False),
        sa.PrimaryKeyConstraint("key_hash", name="pk_entry_keys"),
    )
    op.create_table(
        "host_tokens",
        sa.Column("token_hash", sa.String(64), nullable=False),
        sa.Column("host", sa.String(64), nullable=False),
        sa.Column("made_at", sa.DateTime(timezone=True), nullable=False),
        sa.PrimaryKeyConstraint("token_hash", name="pk_host_tokens"),
    )
    op.create_table(
        "heartbeat",
        sa.Column("id", sa.Integer(), autoincrement=False, nullable=False),
        sa.Column("at", sa.DateTime(timezone=True), nullable=False),
        sa.PrimaryKeyConstraint("id", name="pk_heartbeat"),
    )
