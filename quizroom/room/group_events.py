"""Facts about a review without a host."""

from dataclasses import dataclass
from datetime import datetime


@dataclass(frozen=True, slots=True, kw_only=True)
class PlayerReady:
    """A player is ready for the round that comes after `round`; `alone`: even with nobody else there."""

    player: str
    round: int
    alone: bool
    at: datetime


@dataclass(frozen=True, slots=True, kw_only=True)
class PauseAsked:
    """A player asked for a pause: no clock runs and nothing opens or closes."""

    player: str
    at: datetime


@dataclass(frozen=True, slots=True, kw_only=True)
class PauseEnded:
    """A player let the group go on."""

    player: str
    at: datetime


@dataclass(frozen=True, slots=True, kw_only=True)
class PlayerLeft:
    """A player's line is gone; the seat and the answers stay."""

    player: str
    at: datetime


@dataclass(frozen=True, slots=True, kw_only=True)
class PlayerReturned:
    """A player who was away is back in the seat."""

    player: str
    at: datetime


GroupEvent = PlayerReady | PauseAsked | PauseEnded | PlayerLeft | PlayerReturned
