"""Rules: the nerve tree, and the spinal segments of muscles."""

from collections.abc import Iterator

from quizroom.knowledge.catalogue import Catalogue
from quizroom.knowledge.checks.flaw import Flaw, at_entry, at_fact, at_muscle
from quizroom.knowledge.facts import Fact
from quizroom.knowledge.model import Supply
from quizroom.knowledge.segments import SEGMENTS, span


def roots_are_segments(catalogue: Catalogue) -> Iterator[Flaw]:
    """Roots are written as C1 to S5, each once."""
    remedy = f"write segments such as {SEGMENTS[4]}, each once"
    for nerve in catalogue.nerves.values():
        if not _segments(nerve.roots):
            yield at_entry(catalogue, "nerves", nerve.id, "no list of segments", remedy, field="roots")
    for fact, row in _supplies(catalogue):
        for field, segments in (("roots", row.roots), ("main", row.main)):
            if not _segments(segments):
                yield at_fact(catalogue, fact, field, "no list of segments", remedy)
    for muscle in catalogue.muscles.values():
        for position, difference in enumerate(muscle.differ):
            if not _segments(difference.segments):
                key = f"differ[{position}].segments"
                yield at_muscle(catalogue, muscle, key, "no list of segments", remedy)


def roots_lie_within_the_nerve(catalogue: Catalogue) -> Iterator[Flaw]:
    """A muscle gets no segment through a nerve that the nerve itself does not carry."""
    for fact, row in _supplies(catalogue):
        nerve = catalogue.nerves.get(row.nerve)
        if nerve and not set(row.roots) <= set(nerve.roots):
            message = f"{span(row.roots)} reach beyond the {nerve.name} ({span(nerve.roots)})"
            yield at_fact(catalogue, fact, "roots", message, "mend the roots here or in nerves.toml")


def main_roots_lie_within_the_roots(catalogue: Catalogue) -> Iterator[Flaw]:
    """The chief segments are among the segments."""
    for fact, row in _supplies(catalogue):
        if not set(row.main) <= set(row.roots):
            message = f"{span(row.main)} is not within {span(row.roots)}"
            yield at_fact(catalogue, fact, "main", message, "mend `main` or `roots`")


def roots_come_from_the_parents(catalogue: Catalogue) -> Iterator[Flaw]:
    """A nerve with parents carries no segment that none of them carries; a root carries itself."""
    for nerve in catalogue.nerves.values():
        parents = [catalogue.nerves[parent] for parent in nerve.parents if parent in catalogue.nerves]
        carried = {root for parent in parents for root in parent.roots}
        if parents and not set(nerve.roots) <= carried:
            message = f"{span(nerve.roots)} reach beyond its parents ({span(carried)})"
            yield at_entry(catalogue, "nerves", nerve.id, message, "mend `roots` or `parents`", field="roots")


def nerve_tree_has_no_circle(catalogue: Catalogue) -> Iterator[Flaw]:
    """No nerve comes from itself."""
    for nerve, above in catalogue.index.nerves_above.items():
        if nerve in above:
            yield at_entry(
                catalogue, "nerves", nerve, "it comes from itself", "mend `parents`", field="parents"
            )


def _supplies(catalogue: Catalogue) -> Iterator[tuple[Fact, Supply]]:
    for fact in catalogue.index.facts.values():
        if isinstance(fact.row, Supply):
            yield fact, fact.row


def _segments(roots: tuple[str, ...]) -> bool:
    return len(set(roots)) == len(roots) and set(roots) <= set(SEGMENTS)
