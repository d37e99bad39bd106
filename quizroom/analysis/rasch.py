"""Rasch's model: P(right) = 1 / (1 + e^(difficulty - ability)), items of 0 and 1.

Difficulties are in logits and centred on 0. Two ways to them: PROX, which can be followed with a pencil, and
conditional maximum likelihood, which assumes nothing about how able the class is.
"""

from collections import Counter
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from math import exp, fsum, log, sqrt

from quizroom.analysis.linear import inverse
from quizroom.analysis.symmetric import symmetric, without

Rows = Sequence[Sequence[float]]
"""Marks of 0 and 1, a row for each player; nothing may be missing."""
PROX_ITEMS, PROX_BOTH = 2.89, 8.35
"""1.7 squared, and 1.7 to the fourth (Wright & Stone 1979, Best Test Design)."""
CLOSE = 1e-10
MOST_STEPS = 500


@dataclass(frozen=True, slots=True, kw_only=True)
class Estimate:
    """A place on the scale, in logits, and its standard error."""

    value: float
    error: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Usable:
    """What the model can take: who or what has nothing or everything right has no finite place."""

    rows: Rows
    items: tuple[int, ...]
    """Which columns are left."""


def usable(rows: Rows) -> Usable:
    """Leave out players and items with nothing or everything right, until none is left to leave out."""
    items = tuple(range(len(rows[0]))) if rows else ()
    kept = [tuple(row) for row in rows]
    while True:
        people = [row for row in kept if 0 < fsum(row[item] for item in items) < len(items)]
        left = tuple(item for item in items if 0 < fsum(row[item] for row in people) < len(people))
        if len(people) == len(kept) and left == items:
            return Usable(rows=[[row[item] for item in items] for row in kept], items=items)
        kept, items = people, left


def is_connected(rows: Rows) -> bool:
    """Whether conditional maximum likelihood has finite difficulties for usable rows.

    Each item must be reached from each by steps from one that somebody had right to one that the same person
    had wrong (Fischer 1981, Psychometrika 46:59-77, from memory). If not, some items lie beyond the others.
    """
    items = range(len(rows[0]))
    beaten = {one: {other for row in rows if row[one] for other in items if not row[other]} for one in items}
    beating = {one: {other for other in items if one in beaten[other]} for one in items}
    return len(_reached(0, beaten)) == len(_reached(0, beating)) == len(items)


def prox(rows: Rows) -> list[Estimate]:
    """Difficulties by PROX, of usable rows (two items or more, two players or more).

    Logits of the items, centred, times an expansion factor for the spread of the players:
    sqrt((1 + V/2.89) / (1 - UV/8.35)), with the sample variances U of items' and V of players' logits.
    """
    people, items = len(rows), len(rows[0])
    right = [fsum(column) for column in zip(*rows, strict=True)]
    hard = [log((people - one) / one) for one in right]
    able = [log(score / (items - score)) for score in (fsum(row) for row in rows)]
    middle, spread, other = _mean(hard), _variance(hard), _variance(able)
    below = max(1 - spread * other / PROX_BOTH, CLOSE)
    factor = sqrt((1 + other / PROX_ITEMS) / below)
    return [
        Estimate(value=factor * (one - middle), error=factor * sqrt(people / (count * (people - count))))
        for one, count in zip(hard, right, strict=True)
    ]


def conditional(rows: Rows, breathe: Callable[[], None] = lambda: None) -> list[Estimate]:
    """Difficulties by conditional maximum likelihood (Andersen 1972, from memory), of usable rows.

    Given everybody's raw score, what is left to choose is which items were right; abilities drop out. The
    errors come from the inverted information. `breathe` is called between two items.
    """
    scores = Counter(round(fsum(row)) for row in rows)
    right = [fsum(column) for column in zip(*rows, strict=True)]
    values = [0.0] * len(right)
    for _ in range(MOST_STEPS):
        steps: list[float] = []
        for item, count in enumerate(right):
            steps.append(_step(values, item, count, scores))
            breathe()
        middle = _mean(steps)
        values = [value + step - middle for value, step in zip(values, steps, strict=True)]
        if max(abs(step) for step in steps) < CLOSE:
            break
    errors = _errors(values, scores, breathe)
    return [Estimate(value=value, error=error) for value, error in zip(values, errors, strict=True)]


def _step(values: Sequence[float], item: int, right: float, scores: Counter[int]) -> float:
    """Newton's step for one item. The items are tied by their sum, hence the factor (k - 1) / k."""
    easy = [exp(-value) for value in values]
    rest, every = without(easy, item), symmetric(easy)
    chances = {score: easy[item] * rest[score - 1] / every[score] for score in scores}
    expected = fsum(people * chances[score] for score, people in scores.items())
    information = fsum(people * chances[score] * (1 - chances[score]) for score, people in scores.items())
    return (expected - right) / information * (len(values) - 1) / len(values)


def _errors(values: Sequence[float], scores: Counter[int], breathe: Callable[[], None]) -> list[float]:
    easy, items = [exp(-value) for value in values], len(values)
    every = symmetric(easy)
    alone = [without(easy, item) for item in range(items)]
    matrix = [[0.0] * items for _ in range(items)]
    for one in range(items):
        breathe()
        for other in range(one, items):
            pair = without(easy, one, other) if one != other else []
            matrix[one][other] = matrix[other][one] = fsum(
                people * _shared(easy, every, alone, pair, (one, other, score))
                for score, people in scores.items()
            )
    # The information says nothing about a shift of all items: it is filled in there and taken out again.
    filled = [[cell + 1 / items for cell in row] for row in matrix]
    return [sqrt(max(0.0, row[item] - 1 / items)) for item, row in enumerate(inverse(filled))]


def _shared(
    easy: Sequence[float],
    every: Sequence[float],
    alone: Sequence[Sequence[float]],
    pair: Sequence[float],
    at: tuple[int, int, int],
) -> float:
    """The covariance of two items among those with one raw score; of an item with itself its variance."""
    one, other, score = at
    first = easy[one] * alone[one][score - 1] / every[score]
    second = easy[other] * alone[other][score - 1] / every[score]
    if one == other:
        return first * (1 - first)
    both = easy[one] * easy[other] * pair[score - 2] / every[score] if score >= 2 else 0.0
    return both - first * second


def _reached(start: int, steps: Mapping[int, set[int]]) -> set[int]:
    found, ahead = {start}, [start]
    while ahead:
        fresh = steps[ahead.pop()] - found
        found |= fresh
        ahead += fresh
    return found


def _mean(values: Sequence[float]) -> float:
    return fsum(values) / len(values)


def _variance(values: Sequence[float]) -> float:
    middle = _mean(values)
    return fsum((value - middle) ** 2 for value in values) / max(1, len(values) - 1)
