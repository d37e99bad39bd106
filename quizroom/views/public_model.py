"""What each audience may see.

`PublicView` is the same for the wall and every seat, byte for byte; a seat gets its own `OwnView`
(`own_model.py`) beside it, the host's desk a `DeskView` (`desk_model.py`). Times are milliseconds of server
time since 1970 (UTC); shares are 0 to 1.
"""

from dataclasses import dataclass
from typing import Literal

from quizroom.knowledge.record import Record
from quizroom.room.state import Phase
from quizroom.views.item_model import ClockFace, ItemFace
from quizroom.views.result_model import ResultFace
from quizroom.views.station_model import StationsFace
from quizroom.views.talk_model import SecondFace


@dataclass(frozen=True, slots=True, kw_only=True)
class StandingRow:
    """A line of the standings. Equal marks share a place. In bench play `handle` is the bench's name."""

    place: int
    handle: str
    marks: float
    of: int


@dataclass(frozen=True, slots=True, kw_only=True)
class GroupFace:
    """How far a review without a host is. Who is waited for is a number; nobody is named."""

    present: int
    waited_for: int
    """How many of those present have not answered, or are not ready yet."""
    paused: bool
    reading_until: int | None
    """When the record gives way by itself, if it does."""
    reading_left_ms: int | None
    """What is left of the reading time in a pause."""
    handles: tuple[str, ...]
    """Who is there before the first round; empty afterwards."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BenchRow:
    """A bench by name, and how many sit at it."""

    bench: str
    players: int


@dataclass(frozen=True, slots=True, kw_only=True)
class BenchesFace:
    """How benches are played; nobody is named."""

    how: Literal["choice", "drawn"]
    answers: bool
    """Whether each bench hands in one answer of its own."""
    rows: tuple[BenchRow, ...]
    answered: int
    """How many benches have handed in for the current round."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PublicView:
    """What anybody in the room may see."""

    version: int
    now: int
    phase: Phase
    title: str
    course: str
    door_code: str
    players: int
    answered: int | None
    """How many have answered this round; None where the desk alone may know."""
    round: int
    """Number of the current round; 0 before the first."""
    rounds: int
    """Rounds planned in all: opened plus ahead."""
    item: ItemFace | None
    asks_certainty: bool
    """Whether players say how certain they are of their answer to this item."""
    clock: ClockFace | None
    result: ResultFace | None
    """None before the round is closed, and in a closed one as long as its result is held."""
    second: SecondFace | None = None
    """Second answers beside the result, where the round was answered again."""
    records: tuple[Record, ...]
    waiting: tuple[str, ...]
    """Muscles of the round that a later one asks about: their records are shown then."""
    standings: tuple[StandingRow, ...] | None
    cautions: tuple[str, ...]
    group: GroupFace | None
    """None where a host leads."""
    benches: BenchesFace | None
    """None where everybody plays alone."""
    for_credit: bool = False
    """Whether marks count outside this room, for who has said by institutional id who they are."""
    offers_time: bool = False
    """Whether players may take more time by themselves, in this round and in those to come."""
    stations: StationsFace | None = None
    """Where benches are that started at different items; None once all of these have been shown."""
