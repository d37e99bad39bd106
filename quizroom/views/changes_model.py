"""What the desk sees of flags and changes, and a seat of its own flag. Units as in `public_model.py`."""

from dataclasses import dataclass

from quizroom.room.changes import ChangeKind


@dataclass(frozen=True, slots=True, kw_only=True)
class FlagText:
    """What somebody wrote with a flag; nobody is told who."""

    text: str
    settled: bool
    asked: str = ""
    """The question of a second look, where the flag was put up there over other words than the item's."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FlagsFace:
    """The flags of one item: how many are up, how many of them the host has not settled, and their words."""

    up: int
    waiting: int
    texts: tuple[FlagText, ...]
    """Of those with words, in the order in which players put them up."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ChangeRow:
    """What a host changed of what answers are worth; `round` is 0 where it concerns the whole review."""

    round: int
    kind: ChangeKind
    text: str
    """The change in words."""
    reason: str
    by: str
    """Name of the host; "" in logs from before names were noted."""
    at: int | None


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnFlag:
    """The flag that a player has put up for a round."""

    round: int
    text: str
