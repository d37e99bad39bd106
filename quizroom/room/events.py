"""Facts about a room. The log of them is the only truth; they hold raw choices, never marks."""

from dataclasses import dataclass
from datetime import datetime
from typing import Literal

from quizroom.questions.model import Item
from quizroom.room.adding import ItemAdded
from quizroom.room.bench_events import BenchEvent
from quizroom.room.change_events import ChangeEvent
from quizroom.room.credit_events import CreditEvent
from quizroom.room.group_events import GroupEvent
from quizroom.room.host_events import HostEvent
from quizroom.room.owner_events import OwnerEvent
from quizroom.room.state import Certainty, Plan
from quizroom.room.station_events import StationEvent
from quizroom.room.talk_events import TalkEvent
from quizroom.room.time_events import TimeEvent


@dataclass(frozen=True, slots=True, kw_only=True)
class ReviewPrepared:
    """The review was laid out; `room` is its id for ever."""

    room: str
    host: str
    plan: Plan
    items: tuple[Item, ...]
    at: datetime


@dataclass(frozen=True, slots=True, kw_only=True)
class ItemSwapped:
    """Another item took this place."""

    position: int
    item: Item


@dataclass(frozen=True, slots=True, kw_only=True)
class ItemDropped:
    """The item in this place was left out; later ones moved up."""

    position: int


@dataclass(frozen=True, slots=True, kw_only=True)
class DoorOpened:
    """Players may enter with this code."""

    door_code: str
    at: datetime


@dataclass(frozen=True, slots=True, kw_only=True)
class SeatEntered:
    """A player took a seat; their first counted round is `from_round`.

    `owner` says to whose history the seat belongs (SHA-256 of a player's own key), "" to nobody's; `at` is
    None in logs from before it was noted.
    """

    player: str
    handle: str
    key_hash: str
    from_round: int
    owner: str = ""
    at: datetime | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class PlayerRenamed:
    """A player has another handle."""

    player: str
    handle: str


@dataclass(frozen=True, slots=True, kw_only=True)
class PlayerRemoved:
    """A player was sent out. `by` names the host who did it, "" a group's opener or an older log."""

    player: str
    by: str = ""
    at: datetime | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class RoundOpened:
    """Round `round` (1, 2, ...) takes answers until `closes_at`, or without limit if None."""

    round: int
    at: datetime
    closes_at: datetime | None


@dataclass(frozen=True, slots=True, kw_only=True)
class AnswerAccepted:
    """A player's raw choice as received; a later one replaces it.

    For an ordering `choice` is all letters in the player's order, for a matching a letter or "" for each row.
    """

    player: str
    round: int
    choice: tuple[str, ...]
    typed: tuple[str, ...]
    at: datetime
    certainty: Certainty | None = None
    again: bool = False
    """Whether it was given after talking: it stands beside the first answer."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RoundPaused:
    """The clock stands with `left_ms` to go (None in an untimed round)."""

    left_ms: int | None
    at: datetime


@dataclass(frozen=True, slots=True, kw_only=True)
class RoundResumed:
    """The clock runs again until `closes_at`."""

    closes_at: datetime | None
    at: datetime


@dataclass(frozen=True, slots=True, kw_only=True)
class TimeAdded:
    """The round got `ms` more, by the host or for time lost while no server was there."""

    ms: int
    cause: Literal["host", "outage"]
    order: str


@dataclass(frozen=True, slots=True, kw_only=True)
class RoundClosed:
    """Answering has ended."""

    round: int
    cause: Literal["host", "time", "end", "all"]
    at: datetime


@dataclass(frozen=True, slots=True, kw_only=True)
class HoldingSet:
    """Results of rounds that close from now on are held, or not."""

    on: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class ResultShown:
    """The result of the closed round, and of those before it, is known to all."""

    round: int
    at: datetime


@dataclass(frozen=True, slots=True, kw_only=True)
class RecordShown:
    """The record of the closed round is on show."""

    round: int
    at: datetime


@dataclass(frozen=True, slots=True, kw_only=True)
class ItemStruck:
    """The item of this round counts for nobody. `by` is the name of the host, "" in older logs."""

    round: int
    at: datetime
    by: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class ItemRestored:
    """The item of this round counts again. `by` is the name of the host, "" in older logs."""

    round: int
    at: datetime
    by: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class WordsRuled:
    """The host ruled on typed words (normalised) of a round, for everybody."""

    round: int
    words: str
    accept: bool
    at: datetime
    by: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class StandingsSet:
    """Standings are shown, or not."""

    on: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class ReviewEnded:
    """The review is finished."""

    at: datetime


Event = (
    ReviewPrepared
    | ItemSwapped
    | ItemAdded
    | ItemDropped
    | DoorOpened
    | SeatEntered
    | PlayerRenamed
    | PlayerRemoved
    | RoundOpened
    | AnswerAccepted
    | RoundPaused
    | RoundResumed
    | TimeAdded
    | RoundClosed
    | HoldingSet
    | ResultShown
    | RecordShown
    | ItemStruck
    | ItemRestored
    | WordsRuled
    | StandingsSet
    | ReviewEnded
    | GroupEvent
    | OwnerEvent
    | BenchEvent
    | CreditEvent
    | ChangeEvent
    | HostEvent
    | TalkEvent
    | TimeEvent
    | StationEvent
)
