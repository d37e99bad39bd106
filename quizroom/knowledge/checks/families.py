"""What the item families need: a course list that names a family must have facts for it."""

from collections.abc import Mapping

from quizroom.knowledge.anatomy.crossing import joints_crossed
from quizroom.knowledge.catalogue import Catalogue
from quizroom.knowledge.checks.sharing import Facts, Need, opponents, that_share
from quizroom.knowledge.course import keyed
from quizroom.knowledge.facts import FactKind
from quizroom.knowledge.model import Action, Course, Supply


def families_without_facts(catalogue: Catalogue, course: Course) -> tuple[str, ...]:
    """The families of the course for which its muscles have no fact that an item could be made from.

    A family that is not known here is left out: another rule tells of it.
    """
    facts = keyed_facts(catalogue, course)
    return tuple(one for one in course.families if one in NEEDS and not NEEDS[one](catalogue, facts))


def keyed_facts(catalogue: Catalogue, course: Course) -> Facts:
    """The facts of the course's muscles that may be asked for, by its house rules."""
    listed = set(course.muscles)
    facts = (fact for fact in catalogue.index.facts.values() if fact.muscle in listed)
    return tuple(fact for fact in facts if keyed(course, fact))


def _any_of(*kinds: FactKind) -> Need:
    return lambda _, facts: all(any(fact.kind == kind for fact in facts) for kind in kinds)


def _a_prime_mover(_: Catalogue, facts: Facts) -> bool:
    return any(isinstance(fact.row, Action) and fact.row.role == "prime" for fact in facts)


def _a_segment(_: Catalogue, facts: Facts) -> bool:
    return any(isinstance(fact.row, Supply) and fact.row.roots for fact in facts)


def _a_joint(catalogue: Catalogue, facts: Facts) -> bool:
    return any(joints_crossed(catalogue, muscle) for muscle in {fact.muscle for fact in facts})


def _alike(catalogue: Catalogue, facts: Facts) -> bool:
    members = {member for one in catalogue.lookalikes.values() for member in one.members}
    concepts = {concept for fact in facts for concept in (fact.muscle, fact.value, *fact.value.split("."))}
    return bool(members & concepts)


def _a_way(_: Catalogue, facts: Facts) -> bool:
    return any(fact.kind in ("nerve", "artery", "insertion", "compartment") for fact in facts)


def _three_muscles(_: Catalogue, facts: Facts) -> bool:
    return len({fact.muscle for fact in facts}) >= 3


NEEDS: Mapping[str, Need] = {
    "origin": _any_of("origin"),
    "insertion": _any_of("insertion"),
    "action": _any_of("action"),
    "prime_mover": _a_prime_mover,
    "joint": _a_joint,
    "nerve": _any_of("nerve"),
    "root": _a_segment,
    "artery": _any_of("artery"),
    "compartment": _any_of("compartment"),
    "set": that_share(2, of=2),
    "look_alike": _alike,
    "odd_one_out": that_share(3, of=4),
    "antagonist": opponents,
    "name": _any_of("meaning"),
    "lesion": _any_of("nerve"),
    "two_step": _any_of("nerve", "action"),
    "ordering": _a_way,
    "matching": _three_muscles,
}
"""By family, the least that a list must offer."""
