"""Orders about a review as a thing: whose it is, its title, its timing, the order of its items."""

from dataclasses import dataclass

from quizroom.room.state import Timing


@dataclass(frozen=True, slots=True, kw_only=True)
class HandOverReview:
    """Let the review belong to another host."""

    host: str


@dataclass(frozen=True, slots=True, kw_only=True)
class RenameReview:
    """Give the review another title, at any time."""

    title: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ChangeReview:
    """Choose timing and certainty anew, as long as the door is shut."""

    timing: Timing
    seconds: int
    certainty: bool
    players_take_time: bool | None = None
    """Whether players may take more time by themselves; None leaves it as it is."""


@dataclass(frozen=True, slots=True, kw_only=True)
class MoveItem:
    """Put the item at `position` ahead into the place `to`; `item` says which, lest another be moved."""

    position: int
    item: str
    to: int


HostCommand = HandOverReview | RenameReview | ChangeReview | MoveItem
