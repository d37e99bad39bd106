"""The state of a room: what the log of its events adds up to."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime
from typing import Literal, get_args

from quizroom.questions.blueprint import Blueprint
from quizroom.questions.model import Family, Item
from quizroom.room.bench_state import BenchRules
from quizroom.room.changes import Change
from quizroom.room.flag_state import Flag
from quizroom.room.group_state import GroupRules, GroupRun
from quizroom.room.time_state import FactorPercent, TimeLink

Phase = Literal[
    "preparing",
    "gathering",
    "stations",
    "answering",
    "closed",
    "talking",
    "answering again",
    "explained",
    "finished",
]
TIMED: tuple[Phase, ...] = ("answering", "talking", "answering again")
"""Phases in which the current round's clock may run."""
Timing = Literal["computed", "fixed", "untimed"]
Certainty = Literal[1, 2, 3]
CERTAINTIES: tuple[Certainty, ...] = get_args(Certainty)


@dataclass(frozen=True, slots=True, kw_only=True)
class Plan:
    """What the host chose for a review. `seconds` counts only when timing is "fixed"."""

    title: str
    course: str
    course_title: str
    families: tuple[Family, ...]
    rounds: int
    seed: int
    timing: Timing = "computed"
    seconds: int = 45
    typed: bool = True
    """Whether typed answers are dealt beside options."""
    standings: bool = False
    certainty: bool = False
    """Whether players say how certain they are of an answer."""
    capacity: int = 500
    blueprint: Blueprint | None = None
    """The grid by which the items were dealt; None if families took turns."""
    group: GroupRules | None = None
    """How the review runs by itself; None if a host leads it."""
    benches: BenchRules | None = None
    """Who stands together; None if everybody plays alone."""
    holds_results: bool = False
    """Whether a closed round keeps its result back until the host shows it."""
    rehearsal: bool = False
    """Whether programs answer, so that nothing is learned from it about classes."""
    imported: bool = False
    """Whether it was played elsewhere, or earlier, and read from a file: it is only looked at."""
    players_take_time: bool = True
    """Whether players may take more time by themselves where results are held."""
    roster: str = ""
    """Id of the roster on which players say who they are; empty if the review is not for credit."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Player:
    """Somebody in a seat. Rounds before `from_round` are not in their denominator."""

    id: str
    handle: str
    key_hash: str
    from_round: int
    owner: str = ""
    """To whose history the seat belongs; never shown to anybody."""
    factor_percent: FactorPercent = 100
    """How much longer the player may answer; shown to the host and to this player alone."""
    always_since: datetime | None = None
    """Since when the player takes more time in every round by themselves; None if they do not."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """A raw choice and when the server received it."""

    choice: tuple[str, ...]
    typed: tuple[str, ...]
    at: datetime
    certainty: Certainty | None = None
    took_ms: int | None = None
    """How long the player had had the item, where that is not the time since its round was opened."""
    by: str = ""
    """Whose words they are, where it is the answer of a bench: the member who handed it in."""


@dataclass(frozen=True, kw_only=True)  # without slots: `copying` says why
class Round:
    """One opened round. Either its clock runs (`closes_at`), stands (`paused`), or there is none.

    While the class talks it is the clock of the talk.
    """

    number: int
    item: Item
    """As it is keyed now."""
    opened_at: datetime
    closes_at: datetime | None
    limit_ms: int | None
    paused: bool = False
    left_ms: int | None = None
    closed_at: datetime | None = None
    shown_at: datetime | None = None
    """When key, shares and marks became known to all; None as long as the result is held."""
    answered_at_closing: int = 0
    """How many had answered when the round was closed: this is told as long as the result is held."""
    explained_at: datetime | None = None
    struck: bool = False
    orders: tuple[str, ...] = ()
    """Ids of the orders that lengthened this round."""
    answers: Mapping[str, Answer] = field(default_factory=dict)
    talked_at: datetime | None = None
    """When the class began to talk about it; the result is still held then."""
    again_at: datetime | None = None
    """When second answers began to be taken."""
    again_closed_at: datetime | None = None
    first_limit_ms: int | None = None
    """How long the first answering was, once the clock has become that of the talk."""
    second_answers: Mapping[str, Answer] = field(default_factory=dict)
    """What was answered after the talk; it counts for no marks."""
    rulings: Mapping[str, bool] = field(default_factory=dict)
    """What the host accepted (True) or refused of typed words, by their normalised form."""
    bench_answers: Mapping[str, Answer] = field(default_factory=dict)
    """What each bench handed in together, by its name."""
    dealt: Item | None = None
    """The item as it was dealt, if the host keyed it anew."""
    flags: Mapping[str, Flag] = field(default_factory=dict)
    """What players flagged, by player."""
    times_taken: Mapping[str, int] = field(default_factory=dict)
    """How often players took more time for their first answer, by player."""
    times_taken_again: Mapping[str, int] = field(default_factory=dict)
    """The same for second answers."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Stations:
    """The items of a block, all asked at once, and where the bell stands.

    In turn 1 the first bench is at the first item, the second at the second and so on; at each bell all
    move on by one, after the last item to the first.
    """

    first: int
    """Number that the first of the items will have as a round."""
    items: tuple[Item, ...]
    benches: tuple[str, ...]
    """The benches in the order in which they start."""
    turn: int
    turn_at: datetime
    """When this turn began."""
    opened_at: datetime
    closes_at: datetime | None
    limit_ms: int | None
    over: bool = False
    """Whether the last bell has rung, so that results may be shown, item by item."""
    shown: int = 0
    """How many of the items have become rounds."""
    answers: tuple[Mapping[str, Answer], ...]
    """For each item what players answered."""
    bench_answers: tuple[Mapping[str, Answer], ...]
    """For each item what benches handed in."""
    orders: tuple[str, ...] = ()
    """Ids of the orders that lengthened a turn."""

    def place_of(self, bench: str) -> int:
        """At which item, counted from 0, a bench is now; who sits at none goes behind the last bench."""
        start = self.benches.index(bench) if bench in self.benches else len(self.benches)
        return (start + self.turn - 1) % len(self.items)


@dataclass(frozen=True, kw_only=True)  # without slots: `copying` says why
class Room:
    """Everything about one review. Version counts the events that made it."""

    id: str
    host: str
    version: int
    phase: Phase
    plan: Plan
    ahead: tuple[Item, ...]
    """Items whose rounds have not been opened yet, in order."""
    door_code: str = ""
    prepared_at: datetime | None = None
    finished_at: datetime | None = None
    standings: bool = False
    holds_results: bool = False
    """Whether rounds that close from now on keep their results back."""
    players: Mapping[str, Player] = field(default_factory=dict)
    rounds: tuple[Round, ...] = ()
    run: GroupRun | None = None
    """Where a review without a host stands; None if a host leads it."""
    twins: Mapping[str, int] = field(default_factory=dict)
    """Of which round an item asks the fact once more, by the item's id."""
    benches: Mapping[str, str] = field(default_factory=dict)
    """The bench at which each player sits; who sits at none is not in it."""
    stations: Stations | None = None
    """Items through which benches move, or moved without all having been shown yet."""
    claims: Mapping[str, str] = field(default_factory=dict)
    """Which entry of the roster each player has claimed, by opaque ids alone."""
    missed_claims: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    """Ids of the orders by which each player has tried what is not on the roster."""
    changes: tuple[Change, ...] = ()
    """What hosts changed of what answers are worth, in order."""
    time_links: Mapping[str, TimeLink] = field(default_factory=dict)
    """Private links that bring a time factor, by the SHA-256 of their secret."""
    untold: int = 0
    """How many of the events that `version` counts must be noticed by nobody but the desk and one player."""
