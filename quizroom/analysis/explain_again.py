"""What to explain again, the most needed first."""

from collections.abc import Iterable
from dataclasses import dataclass

from quizroom.analysis.certainty import is_right
from quizroom.analysis.confusions import taken_in
from quizroom.analysis.intervals import wilson
from quizroom.analysis.mastery import HAS_IT_ABOVE, Standing, standing_of
from quizroom.analysis.responses import Column
from quizroom.marking import RoundMarks
from quizroom.questions.model import Item

SHARED_ERROR = 0.25
"""From here on the class shares a wrong term, which is worth a word even if most were right (own choice)."""
WEIGHT = 0.25
"""What a shared error, and certain error, adds to the need (own choice)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Again:
    """An item that the class has not got. `need` ranks it, 0 to 1.5."""

    round: int
    item: Item
    mean: float
    people: int
    need: float
    standing: Standing
    taken: str
    """The wrong term that most people gave; empty if none."""
    took: int
    """By how many."""
    sure_and_wrong: int
    """How many were wrong with certainty 3."""


def explain_again(columns: Iterable[tuple[Column, RoundMarks]]) -> tuple[Again, ...]:
    """The items below 70 % of the marks, or with a wrong term that a quarter gave; by need, then by round."""
    found = [_again(column, marked) for column, marked in columns if column.marks]
    wanted = (one for one in found if one.mean <= HAS_IT_ABOVE or one.took / one.people >= SHARED_ERROR)
    return tuple(sorted(wanted, key=lambda one: (-round(one.need, 9), one.round)))


def need(*, missed: float, people: int, took: int, sure_and_wrong: int) -> float:
    """How much an item needs to be explained again.

    The low end of Wilson's interval of the marks missed, so that few people do not outrank many; and a
    quarter of the share that gave the same wrong term, and of the share that was certain and wrong. 12 of 20
    missed, 8 took the same term, 3 were certain and wrong: 0.387 + 0.100 + 0.038 = 0.524.
    """
    return wilson(missed, people).low + WEIGHT * took / people + WEIGHT * sure_and_wrong / people


def _again(column: Column, marked: RoundMarks) -> Again:
    people, total = len(column.marks), sum(column.marks.values())
    pairs = sorted(taken_in(column, marked).items(), key=lambda one: (-one[1], one[0]))
    (_, taken), took = pairs[0] if pairs else (("", ""), 0)
    answers = column.current.answers
    sure = sum(answers[player].certainty == 3 and not is_right(mark) for player, mark in column.marks.items())
    mean = total / people
    return Again(
        round=column.current.number,
        item=column.current.item,
        mean=mean,
        people=people,
        need=need(missed=people - total, people=people, took=took, sure_and_wrong=sure),
        standing=standing_of(mean),
        taken=taken,
        took=took,
        sure_and_wrong=sure,
    )
