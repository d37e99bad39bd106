"""Hosts and invitations in a relational database."""

import threading
from datetime import datetime
from typing import Any

from sqlalchemy import Connection, Engine, Row, delete, insert, select, update

from quizroom.room.handles import folded, tidy_handle
from quizroom.service.host_ports import FIRST_NAME, FIRST_OWNER, Host, Invitation
from quizroom.storage.host_tables import host_invitations, hosts
from quizroom.storage.moments import in_utc
from quizroom.storage.schema import metadata
from quizroom.storage.writing import reading, writing

NOT_INHERITED = frozenset({"hosts", "host_tokens", "entry_keys", "rooms"})
"""Who a host is and how they come in ends with them; `rooms` follows the log of each."""
INHERITED = tuple(
    table for table in metadata.sorted_tables if "host" in table.c and table.name not in NOT_INHERITED
)
"""Whatever else is kept under a host goes to their heir."""
FIRST = Host(id=FIRST_OWNER, name=FIRST_NAME, role="owner")
"""The first owner as long as there is no row of theirs."""


class SqlHosts:
    """`service.host_ports.HostStore` over SQLAlchemy Core."""

    def __init__(self, engine: Engine) -> None:
        """Use tables that `database.open_database` has made."""
        self._engine = engine
        self._turn = threading.Lock()

    def all(self) -> tuple[Host, ...]:
        """All hosts, by name."""
        with reading(self._engine) as connection:
            known = [_host(row) for row in connection.execute(select(hosts))]
        if all(host.id != FIRST_OWNER for host in known):
            known.append(FIRST)
        return tuple(sorted(known, key=lambda host: folded(host.name)))

    def host(self, host: str) -> Host | None:
        """The host with this id."""
        with reading(self._engine) as connection:
            row = connection.execute(select(hosts).where(hosts.c.host == host)).one_or_none()
        if row is None:
            return FIRST if host == FIRST_OWNER else None
        return _host(row)

    def named(self, name: str) -> Host | None:
        """The host with this name."""
        with reading(self._engine) as connection:
            holder = _holder(connection, folded(tidy_handle(name)))
        return None if holder is None else self.host(holder)

    def password_hash(self, host: str) -> str:
        """The hash of a host's password; empty if they have none."""
        with reading(self._engine) as connection:
            found = connection.execute(select(hosts.c.password_hash).where(hosts.c.host == host)).scalar()
        return found or ""

    def set_password(self, host: str, password_hash: str) -> None:
        """Keep the hash of a host's new password, or none."""
        with writing(self._engine, self._turn) as connection:
            _write_down_the_first(connection, host)
            connection.execute(update(hosts).where(hosts.c.host == host).values(password_hash=password_hash))

    def rename(self, host: str, name: str) -> bool:
        """Give a host another name; False if somebody else has it."""
        new = {"name": name, "folded_name": folded(name)}
        with writing(self._engine, self._turn) as connection:
            if _holder(connection, new["folded_name"]) not in (None, host):
                return False
            _write_down_the_first(connection, host)
            connection.execute(update(hosts).where(hosts.c.host == host).values(new))
            return True

    def remove(self, host: str, *, heir: str) -> None:
        """Take a host and their invitations away; their assistants help `heir` from now on."""
        theirs = (host_invitations.c.made_by == host) | (host_invitations.c.helps == host)
        with writing(self._engine, self._turn) as connection:
            connection.execute(delete(host_invitations).where(theirs))
            connection.execute(update(hosts).where(hosts.c.helps == host).values(helps=heir))
            for table in INHERITED:
                connection.execute(update(table).where(table.c.host == host).values(host=heir))
            connection.execute(delete(hosts).where(hosts.c.host == host))

    def invite(self, invitation: Invitation) -> None:
        """Keep an invitation."""
        row = {name: getattr(invitation, name) for name in host_invitations.c.keys()}  # noqa: SIM118 - columns, no mapping
        self._change(insert(host_invitations).values(row))

    def invitations(self, now: datetime) -> tuple[Invitation, ...]:
        """Invitations that are still good, the next to expire first."""
        good = (
            select(host_invitations)
            .where(host_invitations.c.expires_at > now)
            .order_by(host_invitations.c.expires_at, host_invitations.c.key_hash)
        )
        with reading(self._engine) as connection:
            rows = connection.execute(good).all()
        return tuple(_invitation(row) for row in rows)

    def withdraw(self, key_hash: str) -> None:
        """Let an invitation be good no more."""
        self._change(delete(host_invitations).where(host_invitations.c.key_hash == key_hash))

    def accept(self, key_hash: str, host: Host, password_hash: str, now: datetime) -> bool:
        """Spend an invitation and add the host that came of it, both or none."""
        row = _row(host, password_hash)
        with writing(self._engine, self._turn) as connection:
            connection.execute(delete(host_invitations).where(host_invitations.c.expires_at <= now))
            if _holder(connection, row["folded_name"]) is not None:
                return False
            spent = connection.execute(
                delete(host_invitations).where(host_invitations.c.key_hash == key_hash)
            )
            if spent.rowcount != 1:
                return False
            connection.execute(insert(hosts).values(row))
            return True

    def _change(self, statement: Any) -> None:
        with writing(self._engine, self._turn) as connection:
            connection.execute(statement)


def _holder(connection: Connection, folded_name: str) -> str | None:
    found = connection.execute(select(hosts.c.host).where(hosts.c.folded_name == folded_name)).scalar()
    if found is None and folded_name == folded(FIRST_NAME) and not _is_written(connection, FIRST_OWNER):
        return FIRST_OWNER
    return found


def _is_written(connection: Connection, host: str) -> bool:
    return connection.execute(select(hosts.c.host).where(hosts.c.host == host)).scalar() is not None


def _write_down_the_first(connection: Connection, host: str) -> None:
    if host == FIRST_OWNER and not _is_written(connection, host):
        connection.execute(insert(hosts).values(_row(FIRST, "")))


def _row(host: Host, password_hash: str) -> dict[str, str]:
    return {
        "host": host.id,
        "name": host.name,
        "folded_name": folded(host.name),
        "role": host.role,
        "helps": host.helps,
        "password_hash": password_hash,
    }


def _host(row: Row[Any]) -> Host:
    return Host(
        id=row.host, name=row.name, role=row.role, helps=row.helps, has_password=bool(row.password_hash)
    )


def _invitation(row: Row[Any]) -> Invitation:
    return Invitation(
        key_hash=row.key_hash,
        role=row.role,
        helps=row.helps,
        made_by=row.made_by,
        expires_at=in_utc(row.expires_at),
    )
