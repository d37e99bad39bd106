"""Facts about a review as a thing: whose it is, its title, its timing, the order of its items."""

from dataclasses import dataclass
from datetime import datetime

from quizroom.room.state import Timing


@dataclass(frozen=True, slots=True, kw_only=True)
class ReviewHandedOver:
    """From now on the review belongs to this host."""

    host: str
    at: datetime


@dataclass(frozen=True, slots=True, kw_only=True)
class ReviewRenamed:
    """The review has another title."""

    title: str
    at: datetime


@dataclass(frozen=True, slots=True, kw_only=True)
class ReviewChanged:
    """Rounds are timed like this from now on, and certainty is asked for or not."""

    timing: Timing
    seconds: int
    certainty: bool
    at: datetime
    players_take_time: bool | None = None
    """None where it stays as it is."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ItemMoved:
    """The item at `position` ahead was taken out and put in at `to`."""

    position: int
    to: int


HostEvent = ReviewHandedOver | ReviewRenamed | ReviewChanged | ItemMoved
