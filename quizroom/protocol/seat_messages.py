"""Messages of seats and walls, and those that any page sends."""

from dataclasses import dataclass
from typing import Annotated, Literal

from pydantic import Field

from quizroom.protocol.fields import (
    DoorCode,
    Handle,
    LetterOrNone,
    MessageId,
    PlayerKey,
    RoundNumber,
    SeatKey,
    Words,
)
from quizroom.room.state import Certainty


@dataclass(frozen=True, slots=True, kw_only=True)
class EnterSeat:
    """Take a seat. `seat_key` is made by the browser (>= 128 random bits) and proves the seat later.

    With a `player_key` the seat belongs to the history of that player; the server keeps its hash alone.
    """

    id: MessageId
    type: Literal["enter_seat"]
    door_code: DoorCode
    handle: Handle
    seat_key: SeatKey
    player_key: PlayerKey = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class ResumeSeat:
    """Come back to one's own seat; with a `player_key` it belongs to that history from now on."""

    id: MessageId
    type: Literal["resume_seat"]
    door_code: DoorCode
    seat_key: SeatKey
    player_key: PlayerKey = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class WatchWall:
    """Show the wall of a room."""

    id: MessageId
    type: Literal["watch_wall"]
    door_code: DoorCode


@dataclass(frozen=True, slots=True, kw_only=True)
class ShowView:
    """Send my views again (after a version gap)."""

    id: MessageId
    type: Literal["show_view"]


@dataclass(frozen=True, slots=True, kw_only=True)
class ProbeTime:
    """Ask for server time, to estimate the offset of the clocks (RFC 5905, section 8)."""

    id: MessageId
    type: Literal["probe_time"]


@dataclass(frozen=True, slots=True, kw_only=True)
class SubmitAnswer:
    """Answer the open round; the last one before closing counts.

    `choice` holds the letters chosen; of an ordering all letters in order, of a matching one for each row
    ("" for none).
    """

    id: MessageId
    type: Literal["submit_answer"]
    round: RoundNumber
    choice: Annotated[tuple[LetterOrNone, ...], Field(max_length=10)] = ()
    typed: Annotated[tuple[Words, ...], Field(max_length=10)] = ()
    certainty: Certainty | None = None
    again: bool = False
    """Whether it is the second answer, after talking."""


@dataclass(frozen=True, slots=True, kw_only=True)
class KeepResults:
    """Keep what I answer in this review under my own key, or do not (an empty `player_key`)."""

    id: MessageId
    type: Literal["keep_results"]
    player_key: PlayerKey


SeatMessage = EnterSeat | ResumeSeat | WatchWall | ShowView | ProbeTime | SubmitAnswer | KeepResults
