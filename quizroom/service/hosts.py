"""Hosts come, sign in and go: invitations, passwords, and what becomes of the reviews of who is removed."""

import threading
from collections.abc import Callable
from dataclasses import dataclass, field
from datetime import timedelta

from quizroom.room.handles import folded, is_good_handle, tidy_handle
from quizroom.room.host_commands import HandOverReview
from quizroom.service.hashing import hash_of_secret
from quizroom.service.host_ports import FIRST_OWNER, Host, HostRole, HostStore, Invitation
from quizroom.service.passwords import (
    LONGEST_PASSWORD,
    Passwords,
    PasswordTries,
    fault_of_password,
    tidy_password,
)
from quizroom.service.ports import Accounts, Clock, EventLog
from quizroom.service.rooms import Rooms

INVITATION_LIVES = timedelta(days=3)

WRONG = "This name and password do not match. Check capital letters, or ask for a new link."
TOO_MANY = "Too many wrong passwords. Wait some minutes and try again; a desk that is open stays open."
BAD_NAME = "A name has 1 to 40 characters, at least one letter or figure among them."
NAME_TAKEN = "Another host of this server has that name. Add something to yours."
INVITATION_GONE = "This invitation has been used or withdrawn, or is too old. Ask for another."
WRONG_OLD = "That is not your present password. Try again, or ask for a link that lets you in anew."
FIRST_STAYS = "The first owner cannot be removed: the link that the server prints opens that desk."
NOT_YOURSELF = "You cannot remove yourself. Ask another owner, or whoever runs the server."
NO_SUCH_HOST = "There is no such host. Names are listed on the page Hosts and by: quizroom hosts list"
NO_SUCH_OWNER = "An assistant helps an owner. Name one of the owners."


class HostFault(Exception):
    """What was asked about a host cannot be done; the text says why and what to do."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Hosts:
    """What can be done about hosts. Who may do so is judged where they are asked."""

    store: HostStore
    accounts: Accounts
    passwords: Passwords
    clock: Clock
    new_secret: Callable[[], str]
    new_id: Callable[[], str]
    tries: PasswordTries = field(default_factory=PasswordTries)
    one_at_a_time: threading.Lock = field(default_factory=threading.Lock)
    """Each check of a password takes 64 MiB."""

    def sign_in(self, name: str, password: str) -> Host:
        """The host with this name and password. An unknown name takes as long as a wrong password.

        Raises:
            HostFault: they do not belong together, or too many have been tried.
        """
        account, now = folded(tidy_handle(name)), self.clock.now().timestamp()
        if not self.tries.take(account, now):
            raise HostFault(TOO_MANY)
        host = self.store.named(name)
        if not self._proves(host, password) or host is None:
            raise HostFault(WRONG)
        self.tries.give_back(account, now)
        return host

    def invite(self, by: Host, *, role: HostRole, helps: str = "") -> str:
        """The key of a new invitation, good for three days; `helps` is the id of an owner."""
        owner = self.store.host(helps) if role == "assistant" else None
        if role == "assistant" and (owner is None or owner.role != "owner"):
            raise HostFault(NO_SUCH_OWNER)
        key = self.new_secret()
        self.store.invite(
            Invitation(
                key_hash=hash_of_secret(key),
                role=role,
                helps=helps if role == "assistant" else "",
                made_by=by.id,
                expires_at=self.clock.now() + INVITATION_LIVES,
            )
        )
        return key

    def invitation(self, key: str) -> Invitation | None:
        """The invitation that a key opens, without spending it."""
        wanted = hash_of_secret(key)
        return next((one for one in self.store.invitations(self.clock.now()) if one.key_hash == wanted), None)

    def accept(self, key: str, *, name: str, password: str) -> Host:
        """Become a host by an invitation, with a name and a password of one's own. Raises `HostFault`."""
        invitation = self.invitation(key)
        if invitation is None:
            raise HostFault(INVITATION_GONE)
        tidy = self._free_name(name)
        host = Host(
            id=self.new_id(), name=tidy, role=invitation.role, helps=invitation.helps, has_password=True
        )
        hashed = self._hash_of_good(password, tidy)
        if not self.store.accept(invitation.key_hash, host, hashed, self.clock.now()):
            raise HostFault(NAME_TAKEN if self.store.named(tidy) else INVITATION_GONE)
        return host

    def rename(self, host: Host, name: str) -> None:
        """Give oneself another name. Raises `HostFault`."""
        tidy = tidy_handle(name)
        if not is_good_handle(tidy):
            raise HostFault(BAD_NAME)
        if not self.store.rename(host.id, tidy):
            raise HostFault(NAME_TAKEN)

    def change_password(self, host: Host, *, old: str, new: str) -> None:
        """Give oneself another password, or a first one; then every other browser must sign in anew.

        Raises:
            HostFault: the old one is wrong, or the new one will not do.
        """
        if host.has_password:
            account, now = folded(host.name), self.clock.now().timestamp()
            if not self.tries.take(account, now):
                raise HostFault(TOO_MANY)
            if not self._proves(host, old):
                raise HostFault(WRONG_OLD)
            self.tries.give_back(account, now)
        self.store.set_password(host.id, self._hash_of_good(new, host.name))
        self.accounts.drop_tokens_of(host.id)

    def reset(self, host: Host) -> None:
        """Take a host's password away and close their desk everywhere; a link lets them in anew."""
        self.store.set_password(host.id, "")
        self.accounts.drop_tokens_of(host.id)

    def remove(self, host: Host, *, heir: Host, rooms: Rooms, log: EventLog) -> int:
        """Remove a host; their reviews go to `heir`. How many those were.

        Raises:
            HostFault: it is the first owner, or the heir, or the heir owns no reviews.
        """
        if host.id == FIRST_OWNER:
            raise HostFault(FIRST_STAYS)
        if host.id == heir.id or heir.role != "owner":
            raise HostFault(NOT_YOURSELF if host.id == heir.id else NO_SUCH_OWNER)
        # Their desk is closed first and their name goes last: if it breaks off, it can be done again.
        self.reset(host)
        theirs = log.rooms_of_host(host.id)
        for room in theirs:
            rooms.handle(room, HandOverReview(host=heir.id))
        self.store.remove(host.id, heir=heir.id)
        return len(theirs)

    def _proves(self, host: Host | None, password: str) -> bool:
        known = self.store.password_hash(host.id) if host else ""
        # A longer one is nobody's: what is cut off decides nothing, and costs an unknown name no less time.
        tidy = tidy_password(password)[: LONGEST_PASSWORD + 1]
        with self.one_at_a_time:
            if not known:
                self.passwords.hashed(tidy)  # an unknown name must not be told by its haste
                return False
            right = self.passwords.fits(known, tidy)
        if right and host and self.passwords.is_outdated(known):
            self.store.set_password(host.id, self.passwords.hashed(tidy))
        return right

    def _free_name(self, name: str) -> str:
        tidy = tidy_handle(name)
        if not is_good_handle(tidy):
            raise HostFault(BAD_NAME)
        if self.store.named(tidy) is not None:
            raise HostFault(NAME_TAKEN)
        return tidy

    def _hash_of_good(self, password: str, name: str) -> str:
        tidy = tidy_password(password)
        if fault := fault_of_password(tidy, name):
            raise HostFault(fault)
        with self.one_at_a_time:
            return self.passwords.hashed(tidy)
