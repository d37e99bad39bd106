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


TimeCommand = SetTimeFactor | MakeTimeLink | BringTime
