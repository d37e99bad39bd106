"""Messages of a host who prepares a review, or goes on with one."""

from dataclasses import dataclass
from typing import Annotated, Literal

from pydantic import Field

from quizroom.protocol.bench_messages import BenchChoice
from quizroom.protocol.blueprint import BlueprintChoice
from quizroom.protocol.fields import CourseId, MessageId, RoomId, RosterId, Seconds, Title
from quizroom.room.state import Timing


@dataclass(frozen=True, slots=True, kw_only=True)
class PrepareReview:
    """Host: deal a new review and show it on the desk.

    With a blueprint its cells say which families and how many rounds there are, whatever `families` and
    `rounds` say.
    """

    id: MessageId
    type: Literal["prepare_review"]
    title: Title
    course: CourseId
    families: Annotated[tuple[str, ...], Field(max_length=30)]
    rounds: Annotated[int, Field(ge=1, le=60)]
    timing: Timing
    seconds: Seconds = 45
    typed: bool = True
    standings: bool = False
    certainty: bool = False
    holds_results: bool = False
    players_take_time: bool = True
    seed: Annotated[int, Field(ge=0, le=2**31 - 1)] | None = None
    blueprint: BlueprintChoice | None = None
    benches: BenchChoice | None = None
    rehearsal: bool = False
    """Whether programs will answer: such a review teaches nothing about classes."""
    roster: RosterId = ""
    """By which class roster the review is for credit."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ListReviews:
    """Host: which reviews are there to go on with; of many the newest, but for so many that are known."""

    id: MessageId
    type: Literal["list_reviews"]
    skip: Annotated[int, Field(ge=0, le=1_000_000)] = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class OpenDesk:
    """Host: show the desk of this review from now on."""

    id: MessageId
    type: Literal["open_desk"]
    room: RoomId


DeskMessage = PrepareReview | ListReviews | OpenDesk
