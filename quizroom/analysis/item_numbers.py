"""The numbers of an item sheet: how hard an item was, how well it told people apart, what to think of it."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from quizroom.analysis.correlation import correlation_interval, pearson
from quizroom.analysis.distractors import FEWEST_FOR_VERDICTS, Distractors, distractors_of
from quizroom.analysis.intervals import Interval, wilson
from quizroom.analysis.responses import Column, Responses
from quizroom.analysis.upper_lower import discrimination, groups_of

ItemVerdict = Literal["very good", "good", "marginal", "poor", "suspect key"]
BANDS: tuple[tuple[float, ItemVerdict], ...] = (
    (0.40, "very good"),
    (0.30, "good"),
    (0.20, "marginal"),
    (0.0, "poor"),
)
"""By discrimination, after Ebel (Essentials of Educational Measurement, from memory)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ItemNumbers:
    """The statistics of one item. What cannot be computed is None."""

    answered: int
    rapid: int
    silent: int
    difficulty: float | None
    """The mean mark of those who answered: 1 is easy."""
    interval: Interval
    """Wilson's, of the difficulty; for marks between 0 and 1 it is wider than it need be, never narrower."""
    guessing_corrected: float | None
    """Of one best answer: (R - W / (k - 1)) / N with k options; it may be below 0. None with several keys."""
    point_biserial: float | None
    """With the item itself removed from the total."""
    point_biserial_interval: Interval | None
    discrimination: float | None
    group: int
    """So many people are in each of the 27 % groups."""
    distractors: Distractors | None
    verdict: ItemVerdict | None
    """None with fewer than 20 people."""


def item_numbers(responses: Responses, column: Column, ranked: Mapping[str, float]) -> ItemNumbers:
    """The numbers of one item among those of a review; `ranked` is `responses.ranked()`."""
    marks = column.marks
    others = _means_elsewhere(responses, column, ranked)
    pairs = [(marks[player], mean) for player, mean in others.items()]
    together = pearson([mark for mark, _ in pairs], [mean for _, mean in pairs])
    apart = discrimination(marks, ranked)
    answered, total = len(marks), sum(marks.values())
    return ItemNumbers(
        answered=answered,
        rapid=column.rapid,
        silent=column.silent,
        difficulty=total / answered if answered else None,
        interval=wilson(total, answered),
        guessing_corrected=_corrected_share(column),
        point_biserial=together,
        point_biserial_interval=None if together is None else correlation_interval(together, len(pairs)),
        discrimination=apart,
        group=groups_of({player: ranked[player] for player in marks if player in ranked}).size,
        distractors=distractors_of(column, ranked),
        verdict=verdict_of(apart, answered),
    )


def verdict_of(apart: float | None, people: int) -> ItemVerdict | None:
    """What to think of an item by its discrimination; nothing with fewer than 20 people."""
    if apart is None or people < FEWEST_FOR_VERDICTS:
        return None
    return next((word for least, word in BANDS if round(apart, 9) >= least), "suspect key")


def corrected_for_guessing(right: int, wrong: int, options: int) -> float:
    """R - W / (k - 1): what would be right without luck, if all who did not know guessed blindly.

    15 right of 20 with 2, 3, 4, 5 options -> 10, 12.5, 13.33, 13.75.
    """
    return right - wrong / (options - 1)


def _corrected_share(column: Column) -> float | None:
    item = column.current.item
    if item.format != "one_best" or len(item.key) != 1 or len(item.options) < 2 or not column.marks:
        return None
    right = sum(mark == 1.0 for mark in column.marks.values())
    return corrected_for_guessing(right, len(column.marks) - right, len(item.options)) / len(column.marks)


def _means_elsewhere(responses: Responses, column: Column, ranked: Mapping[str, float]) -> dict[str, float]:
    """The mean mark in all other items, of those who are ranked and answered this one and another."""
    found: dict[str, float] = {}
    for player, mark in column.marks.items():
        if player in ranked:
            marks = responses.marks_of(player)
            if len(marks) > 1:
                found[player] = (sum(marks) - mark) / (len(marks) - 1)
    return found
