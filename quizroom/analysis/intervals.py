"""How far off a share may be that was counted among few."""

from dataclasses import dataclass
from math import sqrt

Z_95 = 1.959963984540054
"""The 97.5th percentile of the standard normal distribution."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Interval:
    """From `low` to `high`, both included."""

    low: float
    high: float


def wilson(successes: float, total: float, z: float = Z_95) -> Interval:
    """The score interval of a share, of 95 % unless told otherwise.

    Wilson 1927, J Am Stat Assoc 22:209-212 (formula from memory, compared with a reference library): it stays
    within 0 and 1 and is fair to small classes. Of nobody it is the whole range.
    """
    if total == 0:
        return Interval(low=0.0, high=1.0)
    share = successes / total
    middle = (share + z * z / (2 * total)) / (1 + z * z / total)
    reach = z / (1 + z * z / total) * sqrt(share * (1 - share) / total + z * z / (4 * total * total))
    # At the ends the bounds are exact; rounding must not carry them past.
    low = 0.0 if successes == 0 else max(0.0, middle - reach)
    high = 1.0 if successes == total else min(1.0, middle + reach)
    return Interval(low=low, high=high)
