"""Items of hosts' own, their pictures, and the reviews in which these are."""

import sqlalchemy as sa
from alembic import op

revision = "0004"
down_revision = "0003"


def upgrade() -> None:
    """Make what is missing; no review before knew pictures, so there is nothing to index."""
    present = set(sa.inspect(op.get_bind()).get_table_names())
    for name, make in TABLES.items():
        if name not in present:
            make()


def _own_items() -> None:
    op.create_table(
        "own_items",
        sa.Column("item", sa.String(64), nullable=False),
        sa.Column("host", sa.String(64), nullable=False),
        sa.Column("changed_at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("picture", sa.String(64)),
        sa.Column("body", sa.LargeBinary(), nullable=False),
        sa.PrimaryKeyConstraint("item", name="pk_own_items"),
    )
    op.create_index("ix_own_items_host", "own_items", ["host"])
    op.create_index("ix_own_items_picture", "own_items", ["picture"])


def _pictures() -> None:
    op.create_table(
        "pictures",
        sa.Column("name", sa.String(64), nullable=False),
        sa.Column("host", sa.String(64), nullable=False),
        sa.Column("made_at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("width", sa.Integer(), nullable=False),
        sa.Column("height", sa.Integer(), nullable=False),
        sa.Column("body", sa.LargeBinary(), nullable=False),
        sa.PrimaryKeyConstraint("name", name="pk_pictures"),
    )
    op.create_index("ix_pictures_host", "pictures", ["host"])


def _picture_rooms() -> None:
    op.create_table(
        "picture_rooms",
        sa.Column("name", sa.String(64), nullable=False),
        sa.Column("room", sa.String(64), nullable=False),
        sa.PrimaryKeyConstraint("name", "room", name="pk_picture_rooms"),
    )
    op.create_index("ix_picture_rooms_room", "picture_rooms", ["room"])


TABLES = {"own_items": _own_items, "pictures": _pictures, "picture_rooms": _picture_rooms}
