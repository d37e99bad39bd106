"""How well the marks of a review would hold: reliability and the error of a total.

Rows are players, columns are items. All formulas have the same divisor above and below; mixing them is a
common mistake that gives other numbers.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from math import fsum, sqrt

from quizroom.analysis.f_distribution import f_quantile
from quizroom.analysis.intervals import Interval

Row = Sequence[float | None]
"""The marks of one player; None is missing."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Alpha:
    """Cronbach's alpha, and the range in which it lies with 95 %."""

    value: float
    interval: Interval


def kr_20(rows: Sequence[Sequence[float]]) -> float | None:
    """Kuder & Richardson's formula 20 for items of 0 and 1: k/(k-1) (1 - sum pq / variance of totals).

    Both with divisor N. None with fewer than two items, or if all totals are the same.
    """
    items, people = _shape(rows)
    variance = _variance([fsum(row) for row in rows], people)
    if items < 2 or not variance:
        return None
    shares = [fsum(column) / people for column in zip(*rows, strict=True)]
    return items / (items - 1) * (1 - fsum(p * (1 - p) for p in shares) / variance)


def kr_21(rows: Sequence[Sequence[float]]) -> float | None:
    """Formula 21, which takes all items for equally hard: k/(k-1) (1 - M (k - M) / (k variance))."""
    items, people = _shape(rows)
    variance = _variance([fsum(row) for row in rows], people)
    if items < 2 or not variance:
        return None
    mean = fsum(fsum(row) for row in rows) / people
    return items / (items - 1) * (1 - mean * (items - mean) / (items * variance))


def alpha(rows: Sequence[Row], breathe: Callable[[], None] = lambda: None) -> Alpha | None:
    """Cronbach's alpha for marks of any kind: k/(k-1) (1 - sum of variances / variance of totals).

    Missing marks are left out pair by pair, each covariance over those who have both. The interval is Feldt's
    (Feldt, Woodruff & Salih 1987, Appl Psychol Meas 11:93-103). None where nothing can be computed.
    `breathe` is called between two items.
    """
    items, people = _shape(rows)
    if items < 2 or people < 2:
        return None
    columns = list(zip(*rows, strict=True))
    own = [_covariance(column, column) for column in columns]
    shared: list[float | None] = []
    for place, column in enumerate(columns):
        shared += [_covariance(column, other) for other in columns[place + 1 :]]
        breathe()
    known = [each for each in (*own, *shared) if each is not None]
    total = fsum(known) + fsum(known[items:])
    if len(known) < len(own) + len(shared) or total <= _RESIDUE:
        return None
    value = items / (items - 1) * (1 - fsum(known[:items]) / total)
    return Alpha(value=value, interval=_feldt(value, people, items))


def standard_error(totals: Sequence[float], reliability: float, *, divisor: int) -> float:
    """SEM = s sqrt(1 - r), in marks; `divisor` of the variance is N or N - 1, and must be said beside it."""
    return sqrt((_variance(totals, divisor) or 0.0) * max(0.0, 1 - reliability))


def spearman_brown(reliability: float, times: float) -> float | None:
    """The reliability of a review so many times as long: n r / (1 + (n - 1) r); None below 0."""
    below = 1 + (times - 1) * reliability
    return times * reliability / below if reliability >= 0 and below > 0 else None


def _feldt(value: float, people: int, items: int) -> Interval:
    first = people - 1
    second = first * (items - 1)
    upper_point, lower_point = f_quantile(0.975, first, second), f_quantile(0.025, first, second)
    return Interval(low=1 - (1 - value) * upper_point, high=1 - (1 - value) * lower_point)


def _covariance(one: Row, other: Row) -> float | None:
    pairs = [(a, b) for a, b in zip(one, other, strict=True) if a is not None and b is not None]
    if len(pairs) < 2:
        return None
    mean = fsum(a for a, _ in pairs) / len(pairs)
    other_mean = fsum(b for _, b in pairs) / len(pairs)
    return fsum((a - mean) * (b - other_mean) for a, b in pairs) / (len(pairs) - 1)


def _variance(values: Sequence[float], divisor: int) -> float | None:
    if not values or divisor < 1:
        return None
    mean = fsum(values) / len(values)
    found = fsum((value - mean) ** 2 for value in values) / divisor
    return found if found > _RESIDUE else None


def _shape(rows: Sequence[Row]) -> tuple[int, int]:
    return (len(rows[0]) if rows else 0), len(rows)


_RESIDUE = 1e-12
"""What rounding leaves of a variance where nothing varies."""
