"""Hosts in memory, for tests; the same contract."""

from dataclasses import replace
from datetime import datetime

from quizroom.room.handles import folded, tidy_handle
from quizroom.service.host_ports import FIRST_NAME, FIRST_OWNER, Host, Invitation


class MemoryHosts:
    """`service.host_ports.HostStore` in dictionaries."""

    def __init__(self) -> None:
        """Begin with the first owner."""
        self._hosts = {FIRST_OWNER: Host(id=FIRST_OWNER, name=FIRST_NAME, role="owner")}
        self._hashes: dict[str, str] = {}
        self._invitations: dict[str, Invitation] = {}

    def all(self) -> tuple[Host, ...]:
        """All hosts, by name."""
        return tuple(sorted(self._hosts.values(), key=lambda host: folded(host.name)))

    def host(self, host: str) -> Host | None:
        """The host with this id."""
        return self._hosts.get(host)

    def named(self, name: str) -> Host | None:
        """The host with this name."""
        wanted = folded(tidy_handle(name))
        return next((host for host in self._hosts.values() if folded(host.name) == wanted), None)

    def password_hash(self, host: str) -> str:
        """The hash of a host's password."""
        return self._hashes.get(host, "")

    def set_password(self, host: str, password_hash: str) -> None:
        """Keep the hash of a host's new password, or none."""
        if host in self._hosts:
            self._hashes[host] = password_hash
            self._hosts[host] = replace(self._hosts[host], has_password=bool(password_hash))

    def rename(self, host: str, name: str) -> bool:
        """Give a host another name."""
        holder = self.named(name)
        if holder is not None and holder.id != host:
            return False
        self._hosts[host] = replace(self._hosts[host], name=name)
        return True

    def remove(self, host: str, *, heir: str) -> None:
        """Take a host away; their assistants help `heir`."""
        self._hosts.pop(host, None)
        self._hashes.pop(host, None)
        for key, one in list(self._hosts.items()):
            if one.helps == host:
                self._hosts[key] = replace(one, helps=heir)
        for key, invitation in list(self._invitations.items()):
            if host in (invitation.made_by, invitation.helps):
                del self._invitations[key]

    def invite(self, invitation: Invitation) -> None:
        """Keep an invitation."""
        self._invitations[invitation.key_hash] = invitation

    def invitations(self, now: datetime) -> tuple[Invitation, ...]:
        """Invitations that are still good."""
        good = (one for one in self._invitations.values() if one.expires_at > now)
        return tuple(sorted(good, key=lambda one: (one.expires_at, one.key_hash)))

    def withdraw(self, key_hash: str) -> None:
        """Let an invitation be good no more."""
        self._invitations.pop(key_hash, None)

    def accept(self, key_hash: str, host: Host, password_hash: str, now: datetime) -> bool:
        """Spend an invitation and add the host."""
        known = self._invitations.get(key_hash)
        if known is None or known.expires_at <= now or self.named(host.name) is not None:
            return False
        del self._invitations[key_hash]
        self._hosts[host.id] = host
        self.set_password(host.id, password_hash)
        return True
