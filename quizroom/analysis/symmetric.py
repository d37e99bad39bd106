"""Elementary symmetric functions: the sums over all ways to reach a raw score."""

from collections.abc import Iterable, Sequence


def symmetric(easiness: Iterable[float]) -> list[float]:
    """Entry r is the sum of the products of all choices of r of these values; entry 0 is 1."""
    found = [1.0]
    for one in easiness:
        found = [
            (found[score] if score < len(found) else 0.0) + (one * found[score - 1] if score else 0.0)
            for score in range(len(found) + 1)
        ]
    return found


def without(easiness: Sequence[float], *places: int) -> list[float]:
    """The same without the values at these places."""
    return symmetric(one for place, one in enumerate(easiness) if place not in places)
