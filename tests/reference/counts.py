"""The table of counts: per source and aspect, how many rows agree, disagree or cannot be compared."""

from collections import Counter
from functools import cache
from typing import NamedTuple

from quizroom.knowledge.catalogue import Catalogue
from tests.reference.allowances import allowances, case_of
from tests.reference.comparison import Comparison, comparisons
from tests.reference.contents import core_only
from tests.reference.rows import TABLES


class Counts(NamedTuple):
    """How the rows of a source stand to the content in one aspect.

    `other_reading`: these agree, but only with what is recorded as variant or minority. `left_out`: held
    to be wrong or doubtful by whoever made the table.
    """

    source: str
    aspect: str
    agree: int
    other_reading: int
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


_KINDS = ("agrees", "another reading", "explained", "disagrees", "not comparable", "left out")


def _kind(one: Comparison, core: Comparison) -> str:
    if one.verdict == "agrees" and core.verdict != "agrees":
        return "another reading"
    return "explained" if one.verdict == "disagrees" and case_of(one) in allowances() else one.verdict


def _line(source: str, aspect: str, kinds: dict[str, int]) -> Counts:
    core, other, *rest = kinds.values()
    return Counts(source, aspect, core + other, other, *rest)
