"""Messages of the wire. The browser's types are generated from this file and `views.model`.

A client sends one Socket.IO event, `say`, with one of the `ClientMessage` shapes, and gets a
`Reply` as the event's acknowledgement. The server sends `public`, `own` and `desk` (whole
views) and `tally` (counts between phases). Every message has an `id` chosen by the client:
sending the same message again is harmless and gets the same kind of reply.
"""

from dataclasses import dataclass
from typing import Annotated, Literal

from pydantic import Field

from quizroom.protocol.bench_messages import BenchChoice, BenchMessage
from quizroom.protocol.blueprint import BlueprintChoice
from quizroom.protocol.change_messages import FlagMessage, KeyMessage
from quizroom.protocol.credit_messages import ClaimIdentity
from quizroom.protocol.fields import (
    CourseId,
    DoorCode,
    Handle,
    LetterOrNone,
    MessageId,
    PlayerId,
    PlayerKey,
    RoomId,
    RosterId,
    RoundNumber,
    RoundOrNone,
    SeatKey,
    Seconds,
    Title,
    Words,
)
from quizroom.protocol.group_messages import GroupMessage
from quizroom.protocol.own_messages import OwnMessage
from quizroom.protocol.review_messages import MoveItem, ReviewMessage
from quizroom.protocol.talk_messages import TalkMessage
from quizroom.protocol.time_messages import TimeMessage
from quizroom.room.state import Certainty, Phase, Timing
from quizroom.service.host_ports import HostRole
from quizroom.views.desk_model import DeskView
from quizroom.views.model import OwnView, PublicView


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
    seed: Annotated[int, Field(ge=0, le=2**31 - 1)] | None = None
    blueprint: BlueprintChoice | None = None
    benches: BenchChoice | None = None
    rehearsal: bool = False
    """Whether programs will answer: such a review teaches nothing about classes."""
    roster: RosterId = ""
    """By which class roster the review is for credit."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ListReviews:
    """Host: which reviews are there to go on with."""

    id: MessageId
    type: Literal["list_reviews"]


@dataclass(frozen=True, slots=True, kw_only=True)
class OpenDesk:
    """Host: show the desk of this review from now on."""

    id: MessageId
    type: Literal["open_desk"]
    room: RoomId


@dataclass(frozen=True, slots=True, kw_only=True)
class ItemStep:
    """Host: swap or drop an item that is still ahead; `item` guards against doing it twice."""

    id: MessageId
    type: Literal["swap_item", "drop_item"]
    position: Annotated[int, Field(ge=0, le=1000)]
    item: Annotated[str, Field(min_length=1, max_length=200)]


@dataclass(frozen=True, slots=True, kw_only=True)
class RoundStep:
    """Host: a step of the review. `round` is the round it is meant for (for `open_round` the one to
    open, `public.round + 1`; before the first round 0; for `ring_bell` the turn that ends), so that a repeat
    cannot skip ahead.
    """

    id: MessageId
    type: Literal[
        "open_door",
        "open_round",
        "open_stations",
        "ring_bell",
        "pause_round",
        "resume_round",
        "close_round",
        "show_result",
        "show_record",
        "end_review",
    ]
    round: RoundOrNone


@dataclass(frozen=True, slots=True, kw_only=True)
class AddTime:
    """Host: lengthen the open round by so many seconds."""

    id: MessageId
    type: Literal["add_time"]
    seconds: Annotated[int, Field(ge=1, le=600)]


@dataclass(frozen=True, slots=True, kw_only=True)
class StrikeStep:
    """Host: take a round's item out of all marks, or put it back."""

    id: MessageId
    type: Literal["strike_item", "restore_item"]
    round: RoundNumber


@dataclass(frozen=True, slots=True, kw_only=True)
class RuleOnWords:
    """Host: accept or refuse typed words of a round, for everybody; the last ruling counts."""

    id: MessageId
    type: Literal["rule_on_words"]
    round: RoundNumber
    words: Words
    accept: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class ShowStandings:
    """Host: standings on the wall on or off."""

    id: MessageId
    type: Literal["show_standings"]
    on: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class HoldResults:
    """Host: keep the results of rounds that close from now on back until they are shown, or do not."""

    id: MessageId
    type: Literal["hold_results"]
    on: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class RenamePlayer:
    """Host: give a player another handle."""

    id: MessageId
    type: Literal["rename_player"]
    player: PlayerId
    handle: Handle


@dataclass(frozen=True, slots=True, kw_only=True)
class RemovePlayer:
    """Host: send a player out."""

    id: MessageId
    type: Literal["remove_player"]
    player: PlayerId


ClientMessage = Annotated[
    EnterSeat
    | ResumeSeat
    | WatchWall
    | ShowView
    | ProbeTime
    | SubmitAnswer
    | KeepResults
    | PrepareReview
    | ListReviews
    | OpenDesk
    | ItemStep
    | RoundStep
    | AddTime
    | StrikeStep
    | RuleOnWords
    | ShowStandings
    | HoldResults
    | RenamePlayer
    | RemovePlayer
    | GroupMessage
    | BenchMessage
    | ClaimIdentity
    | OwnMessage
    | KeyMessage
    | FlagMessage
    | TalkMessage
    | ReviewMessage
    | MoveItem
    | TimeMessage,
    Field(discriminator="type"),
]


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanOptions:
    """How a review is timed, and whether it asks for certainty."""

    timing: Timing
    seconds: int
    certainty: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class ReviewLine:
    """A review in the list of an owner's reviews; times in ms since 1970, None where there is none."""

    room: str
    title: str
    course: str
    phase: str
    rounds: int
    prepared_at: int
    finished_at: int | None = None
    planned_at: int | None = None
    opens_itself: bool = False
    archived: bool = False
    options: PlanOptions | None = None
    """What may still be chosen anew; None once the door is open."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Reply:
    """The answer to one message: done, refused (`code`, `text` say why), or failed (send it again).

    `now` is server time in ms. `public`, `own` and `desk` come with entering, resuming, watching and
    opening; `reviews` with `list_reviews`; `answer_round` says which round's answer is now in the log.
    """

    id: str
    result: Literal["done", "refused", "failed"]
    now: int
    code: str = ""
    text: str = ""
    public: PublicView | None = None
    own: OwnView | None = None
    desk: DeskView | None = None
    reviews: tuple[ReviewLine, ...] | None = None
    answer_round: int | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Tally:
    """Counts between two phases, at most twice a second; the desk gets its whole view as often.

    It is also repeated every few seconds. A page that knows another phase or round asks for its views.
    """

    version: int
    phase: Phase
    round: int
    players: int
    answered: int | None
    """None where the desk alone may know."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CourseLine:
    """A course list that the desk offers."""

    id: str
    title: str
    description: str
    muscles: int
    families: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class HostFace:
    """Who sits at this desk. `helps` is the name of the owner whose reviews an assistant runs."""

    name: str
    role: HostRole
    helps: str


@dataclass(frozen=True, slots=True, kw_only=True)
class DeskSettings:
    """What the desk page starts with; served as JSON at /desk/settings."""

    courses: tuple[CourseLine, ...]
    families: tuple[str, ...]
    join_address: str
    host: HostFace | None = None
