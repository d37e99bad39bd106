"""What the service needs from outside. Storage and the clock fill these in."""

from collections.abc import Callable, Collection, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Protocol

from quizroom.room.events import Event


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    """One event in its place in the log of a room; versions count from 1."""

    room: str
    version: int
    event: Event


@dataclass(eq=False)
class VersionTaken(Exception):
    """Somebody else has written this version of a room first; nothing was appended."""

    rooms: tuple[str, ...]


@dataclass(eq=False)
class NotStored(Exception):
    """The store could not make the events durable, or cannot be read. `cause` is for the log.

    Nothing was appended, as far as is known: a database that is lost while it commits may still have done
    so. Orders may be repeated, so nobody has to know.
    """

    cause: str

    @property
    def first_line(self) -> str:
        """What failed, without the statement and the parameters that databases tell after it."""
        return self.cause.partition("\n")[0]


class EventLog(Protocol):
    """The committed log of all rooms."""

    def append(self, entries: Sequence[Entry]) -> None:
        """Commit all entries in one transaction, durably, or none of them.

        In the same transaction whose seat it is follows `SeatEntered`, `SeatLinked` and `PlayerForgotten`,
        and what these take out of the past is taken out of earlier entries (`room.owners.redacted`).

        Raises:
            VersionTaken: a version is there already.
            NotStored: the store refuses or fails (disk full, read-only folder).
        """

    def read(self, room: str, after: int = 0, most: int | None = None) -> tuple[Event, ...]:
        """The events of a room with a version above `after`, in order; empty if there are none.

        With `most` no more than so many, so that a long log can be read in pieces.
        """

    def room_of_door(self, door_code: str) -> str | None:
        """The room with this door code: an unfinished one before finished ones, the newest first."""

    def rooms_of_host(self, host: str) -> tuple[str, ...]:
        """All rooms of a host, newest first."""

    def rooms_with_picture(self, name: str) -> tuple[str, ...]:
        """All rooms in whose items this picture is or was, in order."""

    def rooms_of_roster(self, roster: str) -> tuple[str, ...]:
        """All rooms whose review is for credit by this roster, oldest first."""

    def unfinished_rooms(self) -> tuple[str, ...]:
        """All rooms whose review has not ended."""

    def versions(self, of: Collection[str]) -> Mapping[str, int]:
        """The newest version of each of these rooms that is there."""


class Accounts(Protocol):
    """Who may host: one-time keys that are exchanged for lasting tokens. Only hashes are kept.

    Every change may raise `NotStored`.
    """

    def add_entry_key(self, key_hash: str, host: str, expires_at: datetime) -> None:
        """Keep a one-time key to the desk of a host."""

    def spend_entry_key(self, key_hash: str, now: datetime) -> str | None:
        """Use up a one-time key and return its host; None if it is unknown, used or expired."""

    def add_host_token(self, token_hash: str, host: str, now: datetime) -> None:
        """Keep the token of a host's browser."""

    def host_of_token(self, token_hash: str, *, made_after: datetime) -> str | None:
        """The host to whom this token belongs, if it is there and not too old."""

    def drop_host_token(self, token_hash: str) -> None:
        """Let a token open nothing any more; an unknown one changes nothing."""

    def drop_tokens_of(self, host: str) -> None:
        """Let all tokens and one-time keys of a host open nothing any more."""

    def drop_tokens_before(self, made_before: datetime) -> None:
        """Remove tokens that are too old to open anything."""


class Heartbeat(Protocol):
    """When the server was last known to be alive."""

    def beat(self, now: datetime) -> None:
        """Note that a server is alive; a time before the last one changes nothing. Raises `NotStored`."""

    def last_beat(self) -> datetime | None:
        """The latest such note of any server, if there is one."""


class Notices(Protocol):
    """Word from worker to worker that a room has changed. It may be lost: it is for speed, the log for
    truth.
    """

    def loops(
        self, hear: Callable[[str, int], None], hear_again: Callable[[], None]
    ) -> tuple[Callable[[], None], ...]:
        """What must run beside, each for ever: `hear` is given each notice, `hear_again` called after a
        break.
        """

    def publish(self, room: str, version: int) -> None:
        """Let the other workers know; returns at once and never fails."""

    def fault(self) -> str:
        """What keeps notices from arriving, in a sentence; empty if they do."""


class Clock(Protocol):
    """Where the time comes from."""

    def now(self) -> datetime:
        """The current time, aware, in UTC."""
