"""How closely two rows of numbers go together, and how sure that is."""

from collections.abc import Sequence
from math import atanh, fsum, sqrt, tanh

from quizroom.analysis.intervals import Z_95, Interval

FEWEST_FOR_AN_INTERVAL = 4
"""With fewer pairs the interval of a correlation has no width to compute."""


def pearson(one: Sequence[float], other: Sequence[float]) -> float | None:
    """The product-moment correlation of pairs; None where one of them does not vary.

    With 0 and 1 on one side it is the point-biserial correlation: (M1 - M0) / sigma * sqrt(p q).
    """
    count = len(one)
    if count < 2:
        return None
    middle, other_middle = fsum(one) / count, fsum(other) / count
    spread = fsum((value - middle) ** 2 for value in one)
    other_spread = fsum((value - other_middle) ** 2 for value in other)
    if spread <= _RESIDUE * count or other_spread <= _RESIDUE * count:
        return None
    together = fsum((a - middle) * (b - other_middle) for a, b in zip(one, other, strict=True))
    return max(-1.0, min(1.0, together / sqrt(spread * other_spread)))


def correlation_interval(correlation: float, pairs: int) -> Interval:
    """In which range a correlation of so many pairs lies, with 95 %.

    By Fisher's transformation (R. A. Fisher 1921, from memory): atanh r +- 1.96 / sqrt(n - 3).
    """
    if pairs < FEWEST_FOR_AN_INTERVAL:
        return Interval(low=-1.0, high=1.0)
    if abs(correlation) == 1.0:
        return Interval(low=correlation, high=correlation)
    middle, reach = atanh(correlation), Z_95 / sqrt(pairs - 3)
    return Interval(low=tanh(middle - reach), high=tanh(middle + reach))


_RESIDUE = 1e-18
"""What is left of a sum of squares by rounding where nothing varies."""
