"""The counts as a table in columns."""

from collections.abc import Iterator, Sequence

from tests.reference.counts import Counts
from tests.reference.rows import TABLES

HEADINGS = (
    "source",
    "aspect",
    "agree",
    "of these by another reading",
    "disagree, explained",
    "disagree, unexplained",
    "not comparable",
    "left out",
)
FIRST_NUMBER = 2


def as_text(lines: Sequence[Counts]) -> str:
    """The lines as a table in columns, with a sum for each source."""
    cells = [HEADINGS, *(tuple(map(str, line)) for line in _with_sums(lines))]
    widths = [max(map(len, column)) for column in zip(*cells, strict=True)]
    return "\n".join("  ".join(map(_padded, row, widths, range(len(row)))) for row in cells)


def _padded(cell: str, width: int, column: int) -> str:
    """Words to the left, numbers to the right."""
    return cell.ljust(width) if column < FIRST_NUMBER else cell.rjust(width)


def _with_sums(lines: Sequence[Counts]) -> Iterator[Counts]:
    for source in TABLES.values():
        own = [line for line in lines if line.source == source]
        yield from own
        yield Counts(
            source, "all", *(sum(column) for column in zip(*(line[2:] for line in own), strict=True))
        )
