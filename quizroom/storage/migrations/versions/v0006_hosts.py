"""Several hosts: their names, roles and passwords, invitations, and whose desk a one-time key opens."""

import sqlalchemy as sa
from alembic import op

revision = "0006"
down_revision = "0005"


def upgrade() -> None:
    """Make the tables; all keys until now were those of the first owner."""
    inspector = sa.inspect(op.get_bind())
    present = set(inspector.get_table_names())
    for name, make in TABLES.items():
        if name not in present:
            make()
    if "host" not in {column["name"] for column in inspector.get_columns("entry_keys")}:
        op.add_column("entry_keys", sa.Column("host", sa.String(64), nullable=False, server_default="owner"))


def _hosts() -> None:
    op.create_table(
        "hosts",
        sa.Column("host", sa.String(64), nullable=False),
        sa.Column("name", sa.String(64), nullable=False),
        sa.Column("folded_name", sa.String(200), nullable=False),
        sa.Column("role", sa.String(16), nullable=False),
        sa.Column("helps", sa.String(64), nullable=False),
        sa.Column("password_hash", sa.String(255), nullable=False),
        sa.PrimaryKeyConstraint("host", name="pk_hosts"),
        sa.UniqueConstraint("folded_name", name="uq_hosts_folded_name"),
    )


def _host_invitations() -> None:
    op.create_table(
        "host_invitations",
        sa.Column("key_hash", sa.String(64), nullable=False),
        sa.Column("role", sa.String(16), nullable=False),
        sa.Column("helps", sa.String(64), nullable=False),
        sa.Column("made_by", sa.String(64), nullable=False),
        sa.Column("expires_at", sa.DateTime(timezone=True), nullable=False),
        sa.PrimaryKeyConstraint("key_hash", name="pk_host_invitations"),
    )


TABLES = {"hosts": _hosts, "host_invitations": _host_invitations}
