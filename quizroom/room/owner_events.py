"""Facts about whose history a seat belongs to, and about players who want to be forgotten."""

from dataclasses import dataclass
from datetime import datetime


@dataclass(frozen=True, slots=True, kw_only=True)
class SeatLinked:
    """From now on the seat belongs to this player's history; to nobody's if `owner` is empty.

    `owner` is the SHA-256 of the player's own key, in hex.
    """

    player: str
    owner: str
    at: datetime


@dataclass(frozen=True, slots=True, kw_only=True)
class PlayerForgotten:
    """Whoever sat here is called `handle` from now on, and in everything that was logged before.

    Appending this event takes handle, key and owner out of the earlier events of the room
    (`owners.redacted`), in the same transaction. Answers stay, as nobody's in particular.
    """

    player: str
    handle: str
    at: datetime


OwnerEvent = SeatLinked | PlayerForgotten
