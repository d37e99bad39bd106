"""What the service needs from outside about players who keep a history under a key of their own."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Protocol


@dataclass(frozen=True, slots=True, kw_only=True)
class Seat:
    """A seat in a review: the room, and the player's id within that room."""

    room: str
    player: str


@dataclass(frozen=True, slots=True, kw_only=True)
class KnownPlayer:
    """A player with a history; `player` is the SHA-256 of the key, in hex, and all that is kept of it."""

    player: str
    since: datetime
    seen_at: datetime


class PlayerStore(Protocol):
    """Who keeps a history, and which seats belong to it.

    Seats are noted by the event log itself (`SeatEntered.owner`, `SeatLinked`), in the same transaction.
    """

    def see(self, player: str, at: datetime) -> None:
        """Note that a player is there, for the first time or again. Raises `NotStored`."""

    def known(self, player: str) -> KnownPlayer | None:
        """What is known of a player, if anything."""

    def seats_of(self, player: str) -> tuple[Seat, ...]:
        """The seats of a player, those of the newest review first."""

    def kept_of(self, player: str) -> Mapping[str, Sequence[Mapping[str, object]]]:
        """Everything else that is kept about a player: rows by the name of their table, as plain values."""

    def erase(self, player: str) -> None:
        """Erase a player and everything that refers to them. Raises `NotStored`."""

    def unseen_since(self, before: datetime) -> tuple[str, ...]:
        """Players who were last seen before that."""


class ReviewStore(Protocol):
    """Reviews as things that are kept for a time and then erased."""

    def finished_before(self, before: datetime) -> tuple[str, ...]:
        """Rooms whose review ended before that, the oldest first."""

    def abandoned_before(self, before: datetime) -> tuple[str, ...]:
        """Rooms in which somebody sat, whose review never ended, and which were laid out before that."""

    def erase_review(self, room: str) -> None:
        """Erase a room with its log and all that points to it. Raises `NotStored`."""


class Wiping(Protocol):
    """Takes what was erased out of the files too."""

    def wipe(self) -> bool:
        """Overwrite what was erased; False if somebody uses the database and it must be tried again."""
