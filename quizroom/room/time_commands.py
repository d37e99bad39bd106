"""Orders about time factors."""

from dataclasses import dataclass

from quizroom.room.time_state import FactorPercent


@dataclass(frozen=True, slots=True, kw_only=True)
class SetTimeFactor:
    """The host gives a player this factor; 100 percent takes it back."""

    player: str
    factor_percent: FactorPercent


@dataclass(frozen=True, slots=True, kw_only=True)
class MakeTimeLink:
    """The host makes a private link for one player; `link` is the SHA-256 of its secret, in hex."""

    link: str
    factor_percent: FactorPercent


@dataclass(frozen=True, slots=True, kw_only=True)
class BringTime:
    """A player comes with a private link."""

    player: str
    link: str


@dataclass(frozen=True, slots=True, kw_only=True)
class TakeTime:
    """A player takes more time in this round; `time` counts how often, lest a repeat add it twice."""

    player: str
    round: int
    time: int
    again: bool = False
    """Whether it is for the second answer, after talking."""


@dataclass(frozen=True, slots=True, kw_only=True)
class TakeTimeAlways:
    """A player wants more time in every round of this review, or does not any more."""

    player: str
    on: bool


TimeCommand = SetTimeFactor | MakeTimeLink | BringTime | TakeTime | TakeTimeAlways
