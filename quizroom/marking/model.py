"""Marks of rounds and rooms, as values."""

from collections.abc import Mapping
from dataclasses import dataclass

from quizroom.questions.model import Item
from quizroom.questions.typed import Verdict
from quizroom.room.answers import Said
from quizroom.room.state import Answer


@dataclass(frozen=True, slots=True, kw_only=True)
class RoundMarks:
    """The marks of everybody who answered a round, made from exactly this `item` and these `answers`."""

    item: Item
    answers: Mapping[str, Answer]
    rulings: Mapping[str, bool]
    verdicts: Mapping[str, Verdict]
    """On every text that was typed, as it was typed: judged once, and read by all views."""
    marks: Mapping[str, float]
    said: Mapping[Said, int]
    """How many players gave just this answer: few differ, so views need not look at thousands again."""
    bench_answers: Mapping[str, Answer]
    bench_marks: Mapping[str, float]
    """What each bench's own answer is worth."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Total:
    """Marks of a player over the rounds that count for them."""

    marks: float
    of: int


@dataclass(frozen=True, slots=True, kw_only=True)
class RoomMarks:
    """The marks of a whole room; `totals` leave out the open round, held results and struck items."""

    rounds: tuple[RoundMarks, ...]
    counted: tuple[RoundMarks, ...]
    """Those of `rounds` that the totals are made of."""
    totals: Mapping[str, Total]
    benches: Mapping[str, Total]
    seconds: tuple[RoundMarks | None, ...] = ()
    """What second answers would be worth, round by round; None where there are none. Nothing counts them."""
    order: tuple[float, ...] = ()
    """The marks of everybody in the room, least first; empty while no round counts, when all are level."""
