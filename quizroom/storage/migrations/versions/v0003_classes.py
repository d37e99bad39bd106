"""What classes chose: which reviews were counted, how items were answered, what was chosen wrongly."""

import sqlalchemy as sa
from alembic import op

revision = "0003"
down_revision = "0002"


def upgrade() -> None:
    """Make the tables; reviews that ended before are counted after the next start."""
    present = set(sa.inspect(op.get_bind()).get_table_names())
    for name, make in TABLES.items():
        if name not in present:
            make()


def _class_reviews() -> None:
    op.create_table(
        "class_reviews",
        sa.Column("room", sa.String(64), nullable=False),
        sa.Column("course", sa.String(64), nullable=False),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.PrimaryKeyConstraint("room", name="pk_class_reviews"),
    )
    op.create_index("ix_class_reviews_course", "class_reviews", ["course"])


def _class_asks() -> None:
    op.create_table(
        "class_asks",
        sa.Column("room", sa.String(64), nullable=False),
        sa.Column("ask", sa.String(250), nullable=False),
        sa.Column("typed", sa.Boolean(), nullable=False),
        sa.Column("answered", sa.Integer(), nullable=False),
        sa.Column("right", sa.Integer(), nullable=False),
        sa.PrimaryKeyConstraint("room", "ask", "typed", name="pk_class_asks"),
    )


def _class_choices() -> None:
    op.create_table(
        "class_choices",
        sa.Column("room", sa.String(64), nullable=False),
        sa.Column("ask", sa.String(250), nullable=False),
        sa.Column("typed", sa.Boolean(), nullable=False),
        sa.Column("concept", sa.String(250), nullable=False),
        sa.Column("chosen", sa.Integer(), nullable=False),
        sa.PrimaryKeyConstraint("room", "ask", "typed", "concept", name="pk_class_choices"),
    )


TABLES = {
    "class_reviews": _class_reviews,
    "class_asks": _class_asks,
    "class_choices": _class_choices,
}
