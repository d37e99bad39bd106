"""A player's own page on the wire: second looks, practice, the return plan. JSON under /mine/api.

Dates are the player's own, by the time zone of the settings; times are milliseconds since 1970 (UTC).
"""

from dataclasses import dataclass
from datetime import date
from typing import Annotated, Literal

from pydantic import Field

from quizroom.questions.blueprint import MOST_ROUNDS
from quizroom.questions.model import Family, Spelling
from quizroom.room.answers import LONGEST_WORDS
from quizroom.room.state import Certainty
from quizroom.views.look_model import Look

MOST_ANSWERS = 100
"""Answers in one post; an outbox with more is sent in several."""
LookVerdict = Literal["right", "part", "wrong", "doubtful", "none"]
"""Doubtful: spelled so that only a person could tell; it counts nothing either way. None: no answer."""
PracticeMode = Literal["practice", "mock"]
StationSeconds = Literal[60, 75, 90]
Id = Annotated[str, Field(min_length=1, max_length=64)]
Word = Annotated[str, Field(max_length=80)]
Moment = Annotated[int, Field(ge=0, le=9_007_199_254_740_991)]
Milliseconds = Annotated[int, Field(ge=0, le=24 * 3_600_000)]


@dataclass(frozen=True, slots=True, kw_only=True)
class LookAnswer:
    """Client: an answer to a look. Neither letters nor words: it was left blank."""

    look: Id
    choice: Annotated[tuple[Annotated[str, Field(max_length=1)], ...], Field(max_length=10)]
    typed: Annotated[tuple[Annotated[str, Field(max_length=LONGEST_WORDS)], ...], Field(max_length=20)]
    certainty: Certainty | None = None
    took_ms: Milliseconds
    answered_at: Moment


@dataclass(frozen=True, slots=True, kw_only=True)
class LookAnswers:
    """Client: what the outbox holds. The first answer to a look stays; a repeat is answered the same."""

    answers: Annotated[tuple[LookAnswer, ...], Field(max_length=MOST_ANSWERS)]


@dataclass(frozen=True, slots=True, kw_only=True)
class LookOutcome:
    """What came of an answer. `mark` is 0 to 1; `due` is the day on which the fact comes back."""

    look: str
    verdict: LookVerdict
    mark: float
    because: str
    due: date | None


@dataclass(frozen=True, slots=True, kw_only=True)
class LookOutcomes:
    """One outcome for each answer, in the same order."""

    outcomes: tuple[LookOutcome, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class FlagOfLook:
    """Client: the item of a look seems wrong (`up`, with a few words or none), or does so no more."""

    look: Id
    up: bool
    text: Annotated[str, Field(max_length=400)] = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class LookFlagged:
    """The flag is as the player wished."""

    look: str
    up: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanSettings:
    """What the return plan is made for. Without a date of the practical it looks four weeks ahead.

    `course` may be empty: then what comes back is asked as in the review from which it stems. `time_zone`
    is a name of the IANA time zone database, such as Europe/Paris.
    """

    course: Word
    exam_date: date | None
    minutes_a_day: Annotated[int, Field(ge=2, le=240)]
    time_zone: Annotated[str, Field(min_length=1, max_length=64)]


@dataclass(frozen=True, slots=True, kw_only=True)
class MissedReview:
    """A review in which items were missed; `left` are those not looked at again yet."""

    room: str
    title: str
    finished_at: int | None
    """None while the review still goes on."""
    missed: int
    left: int


@dataclass(frozen=True, slots=True, kw_only=True)
class RegionForecast:
    """Mean predicted recall of the facts of a region, 0 to 1: now, and on the day of the practical."""

    region: str
    facts: int
    now: float
    exam: float


@dataclass(frozen=True, slots=True, kw_only=True)
class DayAhead:
    """A day on which the plan wants something: how many looks, how many minutes."""

    date: date
    count: int
    minutes: int


@dataclass(frozen=True, slots=True, kw_only=True)
class PlaceChoice:
    """A region of a course list."""

    id: str
    name: str


@dataclass(frozen=True, slots=True, kw_only=True)
class CourseChoice:
    """A course list to choose from, with what can be practised of it."""

    id: str
    title: str
    families: tuple[Family, ...]
    regions: tuple[PlaceChoice, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Today:
    """What to do today, and where the plan leads. `minutes` is how long the looks will take."""

    day: date
    exam_date: date
    """The day for which recall is predicted."""
    looks: tuple[Look, ...]
    minutes: int
    missed_reviews: tuple[MissedReview, ...]
    forecast: tuple[RegionForecast, ...]
    ahead: tuple[DayAhead, ...]
    settings: PlanSettings
    courses: tuple[CourseChoice, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class SecondLook:
    """The items missed in one review, asked again: the most certain and wrong first."""

    room: str
    title: str
    looks: tuple[Look, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class PracticeOrder:
    """Client: practice alone. No families or no regions: all that the course list has.

    The same `order` again gives the same set. `seconds` is for each station, None for untimed.
    """

    order: Annotated[str, Field(max_length=64)] = ""
    course: Word
    families: Annotated[tuple[Family, ...], Field(max_length=40)]
    regions: Annotated[tuple[Word, ...], Field(max_length=80)]
    rounds: Annotated[int, Field(ge=1, le=MOST_ROUNDS)]
    mode: PracticeMode
    seconds: StationSeconds | None
    typed: bool
    spelling: Spelling


@dataclass(frozen=True, slots=True, kw_only=True)
class PracticeSet:
    """A set of practice as dealt."""

    id: str
    title: str
    mode: PracticeMode
    seconds: int | None
    looks: tuple[Look, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class MineProblem:
    """Why a request came to nothing, in a sentence that says what to do."""

    problem: str
