"""What several muscles of a course list share, or oppose one another in."""

from collections import defaultdict
from collections.abc import Callable, Iterable

from quizroom.knowledge.catalogue import Catalogue
from quizroom.knowledge.facts import Fact

Facts = tuple[Fact, ...]
Need = Callable[[Catalogue, Facts], bool]
"""Whether the facts of a list are enough for an item family."""


def opponents(catalogue: Catalogue, facts: Facts) -> bool:
    """Whether two muscles do opposite movements at one joint."""
    movers = _muscles_by(fact for fact in facts if fact.kind == "action")
    for (kind, value), muscles in movers.items():
        joint, _, movement = value.partition(".")
        known = catalogue.movements.get(movement)
        others = movers.get((kind, f"{joint}.{known.antagonist}"), set()) if known else set()
        if len(muscles | others) > 1 and others:
            return True
    return False


def that_share(fewest: int, *, of: int) -> Need:
    """So many muscles share a nerve, a place, a movement or a compartment, among so many on the list."""

    def shared(_: Catalogue, facts: Facts) -> bool:
        groups = _muscles_by(fact for fact in facts if fact.kind not in ("name", "meaning", "artery"))
        enough = any(len(muscles) >= fewest for muscles in groups.values())
        return enough and len({fact.muscle for fact in facts}) >= of

    return shared


def _muscles_by(facts: Iterable[Fact]) -> dict[tuple[str, str], set[str]]:
    groups: dict[tuple[str, str], set[str]] = defaultdict(set)
    for fact in facts:
        groups[fact.kind, fact.value].add(fact.muscle)
    return dict(groups)
