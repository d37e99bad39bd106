"""Messages about time factors; what comes of them is told to the host and to the one player alone."""

from dataclasses import dataclass
from typing import Literal

from quizroom.protocol.fields import MessageId, PlayerId, TimeSecret
from quizroom.room.time_state import FactorPercent


@dataclass(frozen=True, slots=True, kw_only=True)
class SetTimeFactor:
    """Host: give a player this time factor, in percent; 100 takes it back."""

    id: MessageId
    type: Literal["set_time_factor"]
    player: PlayerId
    factor_percent: FactorPercent


@dataclass(frozen=True, slots=True, kw_only=True)
class MakeTimeLink:
    """Host: let whoever comes with this secret first have the factor. The desk's browser makes it
    (>= 128 random bits); the server keeps its hash alone.
    """

    id: MessageId
    type: Literal["make_time_link"]
    secret: TimeSecret
    factor_percent: Literal[150, 200]


@dataclass(frozen=True, slots=True, kw_only=True)
class BringTime:
    """Player: I came with this private link."""

    id: MessageId
    type: Literal["bring_time"]
    secret: TimeSecret


TimeMessage = SetTimeFactor | MakeTimeLink | BringTime
