"""The upper and the lower 27 % of a class, and how well an item tells them apart.

Truman Kelley 1939, J Educ Psychol 30:17-24, chose 27 % (from memory). Who share a place share it in parts, so
that nothing depends on the order of the roster.
"""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from math import floor

SHARE = 0.27


@dataclass(frozen=True, slots=True, kw_only=True)
class Groups:
    """How far each player belongs to either group, 0 to 1; the parts of a group add up to `size`."""

    size: int
    upper: Mapping[str, float]
    lower: Mapping[str, float]


def groups_of(totals: Mapping[str, float]) -> Groups:
    """The groups of a class by its totals. Of N people each has round(0.27 N) places, halves upwards."""
    size = floor(SHARE * len(totals) + 0.5)
    return Groups(
        size=size,
        upper=_members(totals, size),
        lower=_members({player: -total for player, total in totals.items()}, size),
    )


def discrimination(marks: Mapping[str, float], totals: Mapping[str, float]) -> float | None:
    """D = (U - L) / n: mean mark of the upper less that of the lower group, -1 to 1; None without groups.

    The groups are made of those who answered the item. N = 40, n = 11, 9 and 3 right -> 0.545.
    """
    groups = groups_of({player: totals[player] for player in marks if player in totals})
    return difference(marks, groups)


def difference(marks: Mapping[str, float], groups: Groups) -> float | None:
    """The same between groups that are known; who has no mark counts 0."""
    if groups.size == 0:
        return None
    upper = sum(part * marks.get(player, 0.0) for player, part in groups.upper.items())
    lower = sum(part * marks.get(player, 0.0) for player, part in groups.lower.items())
    return (upper - lower) / groups.size


def _members(totals: Mapping[str, float], size: int) -> dict[str, float]:
    if size == 0:
        return {}
    # Means that differ by rounding alone are equal.
    rounded = {player: round(total, 9) for player, total in totals.items()}
    last = sorted(rounded.values(), reverse=True)[size - 1]
    sure = _at(rounded.items(), lambda total: total > last)
    shared = _at(rounded.items(), lambda total: total == last)
    part = (size - len(sure)) / len(shared)
    return dict.fromkeys(sure, 1.0) | dict.fromkeys(shared, part)


def _at(totals: Iterable[tuple[str, float]], is_in: Callable[[float], bool]) -> list[str]:
    return [player for player, total in totals if is_in(total)]
