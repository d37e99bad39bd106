"""The oracle's own view of odd ones out: what three of four share and one lacks, property by property."""

from functools import cache

from tests.questions.joint_ways import joints_surely_crossed, joints_that_may_be_crossed
from tests.questions.oracle import Oracle
from tests.questions.overlaps import same_action
from tests.questions.possible import is_contested, is_next_to, named_nerves, readings, true_joints
from tests.questions.source_text import Text

PROPERTIES = ("nerve", "compartment", "crossing", "action")


def oddities(oracle: Oracle, four: list[str], odd: str, declared: str) -> list[str]:
    """What is wrong with an odd one out: not odd as declared, odd in two ways, or others odd as well."""
    found = []
    if not shared(oracle, four, odd, declared):
        found.append(f"{odd} is not odd by {declared}")
    found += [
        f"{odd} is odd by {relation} too"
        for relation in PROPERTIES
        if relation != declared and shared(oracle, four, odd, relation)
    ]
    found += [
        f"{one} may be odd by {relation}"
        for one in four
        if one != odd
        for relation in PROPERTIES
        if _may_share_without(oracle, four, one, relation)
    ]
    return found


def shared(oracle: Oracle, four: list[str], odd: str, relation: str) -> set[str]:
    """What all but one surely share and that one surely lacks."""
    others = [_sure(oracle, one, relation) for one in four if one != odd]
    return {value for value in set.intersection(*others) if not _may_have(oracle.text, odd, relation, value)}


def _may_share_without(oracle: Oracle, four: list[str], one: str, relation: str) -> set[str]:
    """What all others may share and the one may lack."""
    others = [set(_possible(oracle.text, other, relation)) for other in four if other != one]
    return set.intersection(*others) - _sure(oracle, one, relation)


def _may_have(text: Text, muscle: str, relation: str, value: str) -> bool:
    recorded = _possible(text, muscle, relation)
    return value in recorded or (relation == "action" and any(same_action(one, value) for one in recorded))


def _sure(oracle: Oracle, muscle: str, relation: str) -> set[str]:
    match relation:
        case "nerve":
            lines = [set(named_nerves(oracle.text, row.value)) for row in oracle.standard("nerve", muscle)]
            return set.intersection(*lines) if lines else set()
        case "compartment":
            own: str = oracle.text.muscles[muscle]["compartment"]
            return set() if is_contested(oracle.text, muscle) else {own}
        case "crossing":
            return joints_surely_crossed(oracle.text, muscle) & true_joints(oracle.text)
        case _:
            return {row.value for row in oracle.standard("action", muscle)}


@cache
def _possible(text: Text, muscle: str, relation: str) -> frozenset[str]:
    match relation:
        case "nerve":
            rows = readings(text, "nerve", muscle)
            return frozenset(one for row in rows for one in named_nerves(text, row.value))
        case "compartment":
            own, region = text.muscles[muscle]["compartment"], text.muscles[muscle]["region"]
            near = (one for one in text.compartments if is_next_to(text, region, one))
            return frozenset((own, *near)) if is_contested(text, muscle) else frozenset((own,))
        case "crossing":
            return frozenset(joints_that_may_be_crossed(text, muscle) & true_joints(text))
        case _:
            return frozenset(row.value for row in readings(text, "action", muscle))
