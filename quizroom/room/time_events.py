"""Facts about time factors. Nobody but the host and the player may notice that they happened."""

from dataclasses import dataclass
from datetime import datetime

from quizroom.room.time_state import FactorPercent


@dataclass(frozen=True, slots=True, kw_only=True)
class TimeFactorSet:
    """A player has this time factor, by the host or by a private link (its SHA-256, in hex; else "")."""

    player: str
    factor_percent: FactorPercent
    link: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class TimeLinkMade:
    """Whoever comes with the secret of which `link` is the SHA-256 gets this factor, once."""

    link: str
    factor_percent: FactorPercent


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnTimeReturned:
    """Players who still had time of their own in the closed round get back what an outage took."""

    round: int
    ms: int
    order: str
    at: datetime


@dataclass(frozen=True, slots=True, kw_only=True)
class TimeTaken:
    """A player took more time in this round by themselves, so often by now; 0 once they are forgotten."""

    player: str
    round: int
    time: int
    at: datetime
    again: bool = False
    """Whether it was for the second answer."""


@dataclass(frozen=True, slots=True, kw_only=True)
class AlwaysTimeSet:
    """A player takes more time in every round from now on, or does not any more."""

    player: str
    on: bool
    at: datetime


TimeEvent = TimeFactorSet | TimeLinkMade | OwnTimeReturned | TimeTaken | AlwaysTimeSet
