"""What a seat gets beside the public view, for its player alone. Units as in `public_model.py`."""

from dataclasses import dataclass
from typing import Literal

from quizroom.analysis.certainty import Sureness
from quizroom.room.state import Certainty
from quizroom.room.time_state import FactorPercent
from quizroom.views.changes_model import OwnFlag
from quizroom.views.credit import OwnClaim
from quizroom.views.item_model import ClockFace, ItemFace
from quizroom.views.time_model import TimeToTake

Verdict = Literal["right", "part", "wrong", "none", "struck", "not counted"]


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
