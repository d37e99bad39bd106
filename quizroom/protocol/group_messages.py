"""Messages about reviews without a host: a study group opens a room and runs it together."""

from dataclasses import dataclass
from typing import Annotated, Literal

from pydantic import Field

from quizroom.protocol.bench_messages import BenchChoice
from quizroom.protocol.fields import (
    CourseId,
    Handle,
    MessageId,
    PlayerId,
    PlayerKey,
    RoundOrNone,
    Seconds,
    Title,
)
from quizroom.room.state import Timing

MOST_GROUP_ROUNDS = 40


@dataclass(frozen=True, slots=True, kw_only=True)
class OpenGroup:
    """Open a room for a study group and take its first seat.

    With a `player_key` the seat belongs to that player's history. `reading_seconds` is how long a record
    stays at most; None: until everybody present is ready.
    """

    id: MessageId
    type: Literal["open_group"]
    course: CourseId
    rounds: Annotated[int, Field(ge=1, le=MOST_GROUP_ROUNDS)]
    timing: Timing
    handle: Handle
    seat_key: Annotated[str, Field(min_length=16, max_length=128)]
    player_key: PlayerKey = ""
    benches: BenchChoice | None = None
    title: Title = ""
    seconds: Seconds = 45
    typed: bool = True
    standings: bool = True
    reading_seconds: Annotated[int, Field(ge=10, le=3600)] | None = 90


@dataclass(frozen=True, slots=True, kw_only=True)
class SayReady:
    """I am ready for the round after `round`; `alone`: even if nobody else is there."""

    id: MessageId
    type: Literal["say_ready"]
    round: RoundOrNone
    alone: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class PauseStep:
    """Ask for a pause in round `round`, or let the group go on."""

    id: MessageId
    type: Literal["ask_pause", "go_on"]
    round: RoundOrNone


@dataclass(frozen=True, slots=True, kw_only=True)
class RenameSelf:
    """Take another handle."""

    id: MessageId
    type: Literal["rename_self"]
    handle: Handle


@dataclass(frozen=True, slots=True, kw_only=True)
class SendOut:
    """Whoever opened the room sends a player out."""

    id: MessageId
    type: Literal["send_out"]
    player: PlayerId


GroupMessage = OpenGroup | SayReady | PauseStep | RenameSelf | SendOut


@dataclass(frozen=True, slots=True, kw_only=True)
class GroupCourse:
    """A course list that a group may take."""

    id: str
    title: str
    description: str
    muscles: int


@dataclass(frozen=True, slots=True, kw_only=True)
class GroupSettings:
    """What the page for opening a group starts with; served as JSON at /group/settings."""

    open: bool
    """Whether this server lets anybody open a group."""
    courses: tuple[GroupCourse, ...]
    most_players: int
    hours: int
    most_rounds: int
