"""Rules: the artery tree, and which arteries reach which region."""

from collections.abc import Iterator

from quizroom.knowledge.catalogue import Catalogue
from quizroom.knowledge.checks.flaw import Flaw, at_entry, at_fact


def artery_tree_has_no_circle(catalogue: Catalogue) -> Iterator[Flaw]:
    """No artery comes from itself."""
    for artery, above in catalogue.index.arteries_above.items():
        if artery in above:
            yield at_entry(
                catalogue, "arteries", artery, "it comes from itself", "mend `parent`", field="parent"
            )


def an_artery_reaches_its_region(catalogue: Catalogue) -> Iterator[Flaw]:
    """An artery of a muscle is a trunk of the muscle's region, comes from one, or leads to one."""
    for fact in catalogue.index.facts.values():
        region = catalogue.regions.get(catalogue.muscles[fact.muscle].region)
        if fact.kind != "artery" or fact.value not in catalogue.arteries or region is None:
            continue
        before = catalogue.index.arteries_above[fact.value]
        after = catalogue.index.arteries_below.get(fact.value, frozenset())
        if not {fact.value, *before, *after}.intersection(region.arteries):
            trunks = ", ".join(region.arteries) or "none is named"
            message = f"the {catalogue.arteries[fact.value].name} does not reach the region ({trunks})"
            remedy = f'mend the artery, or add its trunk to `arteries` of the region "{region.id}"'
            yield at_fact(catalogue, fact, "artery", message, remedy)
