"""What the server says: the reply to a message, and counts between two phases."""

from dataclasses import dataclass
from typing import Literal

from quizroom.room.state import Phase, Timing
from quizroom.views.desk_model import DeskView
from quizroom.views.own_model import OwnView
from quizroom.views.public_model import PublicView


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanOptions:
    """How a review is timed, whether it asks for certainty, and whether players may take more time."""

    timing: Timing
    seconds: int
    certainty: bool
    players_take_time: bool


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
    opening; `reviews` with `list_reviews`, 500 at most of `reviews_in_all`; `answer_round` says which round's
    answer is now in the log.
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
    reviews_in_all: int | None = None
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
