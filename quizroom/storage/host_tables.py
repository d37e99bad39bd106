"""Tables of hosts and of invitations to become one."""

from sqlalchemy import Column, DateTime, String, Table, UniqueConstraint

from quizroom.storage.tables import metadata

hosts = Table(
    "hosts",
    metadata,
    Column("host", String(64), primary_key=True),
    Column("name", String(64), nullable=False),
    Column("folded_name", String(200), nullable=False),
    Column("role", String(16), nullable=False),
    Column("helps", String(64), nullable=False),
    Column("password_hash", String(255), nullable=False),
    UniqueConstraint("folded_name", name="uq_hosts_folded_name"),
)
"""The first owner is in it once they have a name or a password of their own."""

host_invitations = Table(
    "host_invitations",
    metadata,
    Column("key_hash", String(64), primary_key=True),
    Column("role", String(16), nullable=False),
    Column("helps", String(64), nullable=False),
    Column("made_by", String(64), nullable=False),
    Column("expires_at", DateTime(timezone=True), nullable=False),
)
