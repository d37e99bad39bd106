"""Who may host on a server, and what the service needs from outside about them."""

from dataclasses import dataclass
from datetime import datetime
from typing import Literal, Protocol

HostRole = Literal["owner", "assistant"]
FIRST_OWNER = "owner"
"""The id of the host whom the operator's desk link lets in; always there, and never removed."""
FIRST_NAME = "Host"
"""What the first owner is called until they say otherwise."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Host:
    """Somebody who may host: an owner of reviews, or an assistant who helps the owner `helps`."""

    id: str
    name: str
    role: HostRole
    helps: str = ""
    has_password: bool = False

    @property
    def leads(self) -> str:
        """The owner whose reviews this host sees and runs."""
        return self.id if self.role == "owner" else self.helps


@dataclass(frozen=True, slots=True, kw_only=True)
class Invitation:
    """A link by which somebody may become a host; only the hash of its key is kept."""

    key_hash: str
    role: HostRole
    helps: str
    made_by: str
    expires_at: datetime


class HostStore(Protocol):
    """The hosts of a server, the first owner always among them. Names are unique, case aside.

    Every change may raise `NotStored`.
    """

    def all(self) -> tuple[Host, ...]:
        """All hosts, by name."""

    def host(self, host: str) -> Host | None:
        """The host with this id."""

    def named(self, name: str) -> Host | None:
        """The host with this name."""

    def password_hash(self, host: str) -> str:
        """The hash of a host's password; empty if they have none."""

    def set_password(self, host: str, password_hash: str) -> None:
        """Keep the hash of a host's new password; an empty one takes the password away."""

    def rename(self, host: str, name: str) -> bool:
        """Give a host another name; False if somebody else has it."""

    def remove(self, host: str, *, heir: str) -> None:
        """Take a host and their invitations away; their assistants help `heir` from now on."""

    def invite(self, invitation: Invitation) -> None:
        """Keep an invitation."""

    def invitations(self, now: datetime) -> tuple[Invitation, ...]:
        """Invitations that are still good, the next to expire first; others are dropped."""

    def withdraw(self, key_hash: str) -> None:
        """Let an invitation be good no more; an unknown one changes nothing."""

    def accept(self, key_hash: str, host: Host, password_hash: str, now: datetime) -> bool:
        """Spend an invitation and add the host that came of it, both or none.

        False if the invitation is not good, or if somebody has the host's name.
        """
