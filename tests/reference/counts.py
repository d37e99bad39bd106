"""The table of counts: per source and aspect, how many rows agree, disagree or cannot be compared."""

from collections import Counter
from collections.abc import Iterator, Sequence
from functools import cache
from typing import NamedTuple

from quizroom.knowledge.catalogue import Catalogue
from tests.reference.comparison import Comparison, allowances, comparisons, core_only
from tests.reference.rows import TABLES
from tests.reference.verdicts import Aspect

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


class Counts(NamedTuple):
    """How the rows of a source stand to the content in one aspect.

    `by_another_reading` agree, but only with what is recorded as variant or minority; `left_out` are
    held to be wrong or doubtful by whoever made the table.
    """

    source: str
    aspect: Aspect | str
    agree: int
    by_another_reading: int
    explained: int
    unexplained: int
    not_comparable: int
    left_out: int


@cache
def counts(catalogue: Catalogue) -> tuple[Counts, ...]:
    """One line for each source and aspect, in the order of the tables."""
    pairs = list(zip(comparisons(catalogue), comparisons(core_only(catalogue)), strict=True))
    tally = Counter((one.table, one.aspect, _kind(one, core)) for one, core in pairs)
    lines = dict.fromkeys((one.table, one.aspect) for one, _ in pairs)
    return tuple(
        _line(TABLES[table], aspect, {kind: tally[table, aspect, kind] for kind in _KINDS})
        for table, aspect in lines
    )


def as_text(lines: Sequence[Counts]) -> str:
    """The lines as a table in columns, with a sum for each source."""
    cells = [HEADINGS, *([str(cell) for cell in line] for line in _with_sums(lines))]
    widths = [max(len(row[column]) for row in cells) for column in range(len(HEADINGS))]
    return "\n".join(
        "  ".join(
            cell.ljust(width) if column < 2 else cell.rjust(width)
            for column, (cell, width) in enumerate(zip(row, widths, strict=True))
        )
        for row in cells
    )


_KINDS = ("agrees", "another reading", "explained", "disagrees", "not comparable", "left out")


def _kind(one: Comparison, core: Comparison) -> str:
    if one.verdict == "agrees" and core.verdict != "agrees":
        return "another reading"
    return "explained" if one.verdict == "disagrees" and one.case in allowances() else one.verdict


def _line(source: str, aspect: Aspect, kinds: dict[str, int]) -> Counts:
    core, other, *rest = kinds.values()
    return Counts(source, aspect, core + other, other, *rest)


def _with_sums(lines: Sequence[Counts]) -> Iterator[Counts]:
    for source in TABLES.values():
        own = [line for line in lines if line.source == source]
        yield from own
        yield Counts(
            source, "all", *(sum(column) for column in zip(*(line[2:] for line in own), strict=True))
        )
