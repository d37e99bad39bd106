"""What the host's desk may see: the public view and everything behind it. Units as in `public_model.py`."""

from dataclasses import dataclass
from typing import Literal

from quizroom.analysis.certainty import Sureness
from quizroom.questions.difficulty import Band
from quizroom.questions.model import DistractorSource, Family, Format
from quizroom.room.state import Timing
from quizroom.room.time_state import FactorPercent
from quizroom.views.changes_model import ChangeRow, FlagsFace
from quizroom.views.credit import CreditCount
from quizroom.views.item_model import ClockFace
from quizroom.views.measured import Measured
from quizroom.views.picture import PictureFace
from quizroom.views.public_model import PublicView
from quizroom.views.result_model import RowResult
from quizroom.views.talk_model import TalkPanel


@dataclass(frozen=True, slots=True, kw_only=True)
class DeskOption:
    """An option with everything that the host may know."""

    letter: str
    text: str
    is_key: bool
    reason: str
    source: DistractorSource
    count: int
    share: float


@dataclass(frozen=True, slots=True, kw_only=True)
class DeskTyped:
    """A typed answer as it was written, with its verdict and why."""

    text: str
    verdict: Literal["right", "half", "wrong", "doubtful"]
    because: str
    count: int
    ruled: bool | None
    """What the host ruled: accepted, refused, or None as long as the rule for spelling decides."""


@dataclass(frozen=True, slots=True, kw_only=True)
class DeskItem:
    """An item on the desk. `position` counts from 0 among those ahead; None once opened."""

    id: str
    round: int
    position: int | None
    state: Literal["ahead", "open", "closed", "explained"]
    struck: bool
    twin_of: int | None
    """The round whose fact this item asks once more, if it does."""
    family: Family
    format: Format
    stem: str
    options: tuple[DeskOption, ...]
    rows: tuple[RowResult, ...]
    """Of an ordering or a matching: what belongs where, and how it was answered so far."""
    typed: tuple[DeskTyped, ...]
    key_text: tuple[str, ...]
    why: str
    pick: int
    seconds: int | None
    muscles: tuple[str, ...]
    """Display names of the muscles concerned."""
    region: str
    """The region of the first of them."""
    predicted: Band | None
    observed: Measured | None
    warm_up: bool
    mean_mark: float | None
    picture: PictureFace | None = None
    by_host: bool = False
    key: tuple[str, ...]
    """Letters of the key as it is now, for keying anew; empty for typed formats."""
    dealt_key: str
    """The key as dealt in words, if the host keyed the item anew, else ""."""
    flags: FlagsFace


@dataclass(frozen=True, slots=True, kw_only=True)
class RosterRow:
    """A player on the host's roster."""

    player: str
    handle: str
    from_round: int
    answered: bool
    marks: float
    of: int
    bench: str
    factor_percent: FactorPercent
    """The player's time factor; nobody else hears of it."""
    takes_time: bool
    """Whether the player takes more time by themselves, in this round or in every one; likewise."""
    clock: ClockFace | None
    """Their own clock of the current round, also after it has closed for the rest; None without one."""


DeskAction = Literal[
    "open_door",
    "open_round",
    "open_stations",
    "ring_bell",
    "pause_round",
    "resume_round",
    "add_time",
    "close_round",
    "let_talk",
    "open_again",
    "close_again",
    "ask_twin",
    "show_result",
    "show_record",
    "strike_item",
    "restore_item",
    "end_review",
]


@dataclass(frozen=True, slots=True, kw_only=True)
class DeskView:
    """The host's private panel: the public view and everything behind it."""

    version: int
    now: int
    room: str
    public: PublicView
    seed: int
    families: tuple[str, ...]
    timing: Timing
    fixed_seconds: int
    standings: bool
    """Whether standings are to be shown, also before there are any."""
    holds_results: bool
    """Whether rounds that close from now on keep their results back."""
    answered: int
    """How many have answered the current round so far, also where nobody else may know."""
    can_keep_own_time: bool
    """Whether time factors can mean anything in this review, once results are held."""
    players_take_time: bool
    """Whether players may take more time by themselves, once results are held."""
    items: tuple[DeskItem, ...]
    roster: tuple[RosterRow, ...]
    roster_later: bool
    """Whether the list of players is left out here and follows; until then the one before is as good."""
    sureness: Sureness | None
    """Certainty of the class over the closed rounds, where it is asked for."""
    talks: tuple[TalkPanel, ...]
    """Every round that is talked over, or may be, in order."""
    actions: tuple[DeskAction, ...]
    """What may be done now; the first is the next step of the review."""
    bench_warnings: tuple[str, ...]
    """What is unwise about the benches as they are."""
    credit: CreditCount | None = None
    """How many have said who they are; None unless the review is for credit. Names are on no desk."""
    changes: tuple[ChangeRow, ...]
    """What hosts changed of what answers are worth, in order."""
