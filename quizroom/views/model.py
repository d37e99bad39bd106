"""What each audience may see.

`PublicView` is the same for the wall and every seat, byte for byte; a seat gets its own
`OwnView` beside it, the host's desk a `DeskView` (`desk_model.py`). Times are milliseconds of server time
since 1970 (UTC); shares are 0 to 1.
"""

from dataclasses import dataclass
from typing import Literal

from quizroom.analysis.certainty import Sureness
from quizroom.knowledge.record import Record
from quizroom.questions.model import Family, Format
from quizroom.room.state import Certainty, Phase
from quizroom.room.time_state import FactorPercent
from quizroom.views.changes_model import OwnFlag
from quizroom.views.credit import OwnClaim
from quizroom.views.picture import PictureFace
from quizroom.views.station_model import StationsFace
from quizroom.views.talk_model import SecondFace
from quizroom.views.time_model import TimeToTake

Verdict = Literal["right", "part", "wrong", "none", "struck", "not counted"]


@dataclass(frozen=True, slots=True, kw_only=True)
class OptionFace:
    """An option as asked."""

    letter: str
    text: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ItemFace:
    """An item as asked: nothing in it depends on the key."""

    round: int
    family: Family
    format: Format
    stem: str
    options: tuple[OptionFace, ...]
    pick: int
    stems: tuple[str, ...]
    """The rows of a matching, else empty."""
    warm_up: bool
    picture: PictureFace | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class ClockFace:
    """The round's clock. Running: `closes_at`. Standing: `left_ms`. Untimed: neither, `limit_ms` None."""

    limit_ms: int | None
    closes_at: int | None
    left_ms: int | None
    paused: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class OptionResult:
    """An option after closing; `reason` is there once the record is shown (desk: always)."""

    letter: str
    text: str
    is_key: bool
    count: int
    share: float
    reason: str | None


@dataclass(frozen=True, slots=True, kw_only=True)
class LetterCount:
    """How many put this letter here."""

    letter: str
    count: int


@dataclass(frozen=True, slots=True, kw_only=True)
class RowResult:
    """A place of an ordering or a row of a matching after closing, in the right order.

    `stem` is the row's (empty for a place); `letter` and `text` are those of the right option; `count`
    and `share` tell who had it right, `letters` what was put here instead, most frequent first.
    """

    stem: str
    letter: str
    text: str
    count: int
    share: float
    letters: tuple[LetterCount, ...]
    reason: str | None


@dataclass(frozen=True, slots=True, kw_only=True)
class TypedResult:
    """Typed answers that came to the same verdict. Only terms known to anatomy are spelled out in public."""

    text: str
    verdict: Literal["right", "half", "wrong", "doubtful"]
    count: int
    """People who wrote at least one such word."""
    share: float
    """These of all who answered, 0 to 1. In a list one person may stand in several rows."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ResultFace:
    """What came out of a closed round. `why` is there once the record is shown.

    An ordering or a matching has `rows` in place of `options`.
    """

    options: tuple[OptionResult, ...]
    rows: tuple[RowResult, ...]
    typed: tuple[TypedResult, ...]
    key_text: tuple[str, ...]
    why: str | None
    answered: int
    of: int
    mean_mark: float | None
    struck: bool
    by_host: bool = False
    """Whether the host wrote the item."""
    rekeyed: str
    """That the host keyed the item anew, and how it was dealt; "" where nobody did."""


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


@dataclass(frozen=True, slots=True, kw_only=True)
class AnswerFace:
    """The player's own answer as the server has it."""

    round: int
    choice: tuple[str, ...]
    typed: tuple[str, ...]
    certainty: Certainty | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class ChosenReason:
    """What the player chose or typed, and what that really is."""

    text: str
    right: bool
    reason: str


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnResult:
    """The player's own outcome of a closed round; reasons come with the record."""

    round: int
    verdict: Verdict
    mark: float
    reasons: tuple[ChosenReason, ...]
    certainty_mark: int | None = None
    """What the certainty was worth, if one was said; it stands beside the marks."""
    second: Verdict | None = None
    """How the second answer was, where there is one; it counts for no marks."""


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnRound:
    """What came of one closed round for this player."""

    round: int
    verdict: Verdict
    mark: float


@dataclass(frozen=True, slots=True, kw_only=True)
class SeatMate:
    """Somebody else in the room, for whoever may send them out."""

    player: str
    handle: str


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnGroup:
    """A player's part in a review without a host."""

    ready: bool
    opener: bool
    mates: tuple[SeatMate, ...]
    """The others, for the opener alone."""


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnBench:
    """A player's bench; `bench` is empty as long as none was taken."""

    bench: str
    members: int
    answered_alone: int | None
    """How many of the members have answered the current round by themselves; None where nobody may know."""
    answer: AnswerFace | None
    """What the bench has handed in for the current round."""
    mark: float | None
    """What that is worth, once the round is closed."""
    marks: float
    of: int


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnStation:
    """The item at which the own bench now is."""

    item: ItemFace
    number: int
    """Which of the stations it is, counted from 1."""
    asks_certainty: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnView:
    """What only this player sees."""

    version: int
    now: int
    player: str
    handle: str
    removed: bool
    from_round: int
    round: int
    answer: AnswerFace | None
    second: AnswerFace | None = None
    """What was answered after talking; it counts for no marks."""
    result: OwnResult | None
    marks: float
    of: int
    rounds: tuple[OwnRound, ...]
    """All closed rounds whose result is known, marked as they now stand."""
    place: int | None
    """Own place once a round has closed, if standings are on; in bench play that of the bench."""
    sureness: Sureness | None = None
    """Certainty over the closed rounds, where it is asked for."""
    group: OwnGroup | None
    bench: OwnBench | None
    flag: OwnFlag | None
    """The own flag for the current round, if one is up."""
    factor_percent: FactorPercent
    """How much longer this player may answer than the rest."""
    time_to_take: TimeToTake | None = None
    """None where more time is the host's to give alone."""
    factor_counts: bool
    """Whether the factor counts in this review as it is led now."""
    clock: ClockFace | None
    """The player's own clock, also once the round is closed for the rest; None where all have the same."""
    clock_again: bool
    """Whether what that clock is for is the second answer."""
    kept: bool
    """Whether the seat belongs to a history under a key of the player's own."""
    claim: OwnClaim | None = None
    """How far this seat has said who sits in it; None unless the review is for credit."""
    station: OwnStation | None = None
    """Where the own bench is; None if nowhere, or for whoever came after the stations were opened."""
    flags: tuple[OwnFlag, ...]
    """The own flags that are up, for all rounds so far."""
