"""Spinal segments in order, and ranges of them."""

from collections.abc import Iterable

SEGMENTS: tuple[str, ...] = tuple(
    f"{letter}{number}"
    for letter, count in (("C", 8), ("T", 12), ("L", 5), ("S", 5))
    for number in range(1, count + 1)
)


def in_order(segments: Iterable[str]) -> tuple[str, ...]:
    """The known segments among the given, once each, from the neck down."""
    given = set(segments)
    return tuple(segment for segment in SEGMENTS if segment in given)


def place_of(segments: Iterable[str]) -> tuple[int, ...]:
    """A sorting key: where the segments lie, from the neck down."""
    return tuple(SEGMENTS.index(segment) for segment in in_order(segments))


def span(segments: Iterable[str]) -> str:
    """Segments as they are printed: C5, dash, C7 for a run, "C5, C7" across a gap, "" for none."""
    runs: list[list[str]] = []
    for segment in in_order(segments):
        if runs and SEGMENTS.index(segment) == SEGMENTS.index(runs[-1][-1]) + 1:
            runs[-1].append(segment)
        else:
            runs.append([segment])
    return ", ".join(run[0] if len(run) == 1 else f"{run[0]}\N{EN DASH}{run[-1]}" for run in runs)
