"""Messages about more time for single players; only the host and that player are told."""

from dataclasses import dataclass
from typing import Annotated, Literal

from pydantic import Field

from quizroom.protocol.fields import MessageId, PlayerId, RoundNumber, TimeSecret
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


@dataclass(frozen=True, slots=True, kw_only=True)
class TakeTime:
    """Player: I take more time in this round. `time` is how often I then have (1 the first time), so that a
    repeat does not add twice.
    """

    id: MessageId
    type: Literal["take_time"]
    round: RoundNumber
    time: Annotated[int, Field(ge=1, le=1000)]
    again: bool = False
    """Whether it is for the second answer, after talking."""


@dataclass(frozen=True, slots=True, kw_only=True)
class TakeTimeAlways:
    """Player: I take more time in every round of this review, or not any more."""

    id: MessageId
    type: Literal["take_time_always"]
    on: bool


TakingMessage = TakeTime | TakeTimeAlways
TimeMessage = SetTimeFactor | MakeTimeLink | BringTime | TakingMessage
