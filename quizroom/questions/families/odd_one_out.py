"""Odd one out: three muscles share a nerve, a group, a joint or a movement, and one does not.

The odd one is so by exactly one of these properties, and no property makes any of the others odd.
"""

from collections.abc import Iterator, Mapping

from quizroom.questions.ask import Ask
from quizroom.questions.claim import Relation
from quizroom.questions.company import fitting_company
from quizroom.questions.explain import reason_of_joint, reason_of_unit, value_text
from quizroom.questions.model import Reason
from quizroom.questions.syllabus import Syllabus, Unit, claims_of
from quizroom.questions.traits import SHARED

_FEWEST_ALIKE = 3
_STEMS: Mapping[Relation, str] = {
    "nerve": "Three of these muscles have the same nerve. Which is the odd one out?",
    "compartment": "Three of these muscles belong to the same group. Which is the odd one out?",
    "crossing": "Three of these muscles cross the same joint. Which is the odd one out?",
    "action": "Three of these muscles produce the same movement. Which is the odd one out?",
}
_SHARED_AS: Mapping[Relation, str] = {
    "nerve": "The other three are supplied by",
    "compartment": "The other three belong to",
    "crossing": "The other three cross",
    "action": "The other three produce",
}


def odd_one_out_asks(syllabus: Syllabus) -> Iterator[Ask]:
    """All asks for an odd one out among muscles that lie near one another."""
    for relation in SHARED:
        for value, alike in _alike(syllabus, relation).items():
            if len(alike) >= _FEWEST_ALIKE:
                yield from (
                    _ask(syllabus, relation, value, odd)
                    for odd in _odd_ones(syllabus, relation, value, alike)
                )


def _alike(syllabus: Syllabus, relation: Relation) -> dict[str, list[str]]:
    """The muscles on the list by the values that they surely have."""
    groups: dict[str, list[str]] = {}
    for muscle in syllabus.muscles:
        for value in sorted(syllabus.traits(muscle)[relation].sure):
            groups.setdefault(value, []).append(muscle)
    return groups


def _odd_ones(syllabus: Syllabus, relation: Relation, value: str, alike: list[str]) -> Iterator[str]:
    """Muscles that surely lack the value, near to those that have it."""
    kinship, muscles = syllabus.kinship, syllabus.catalogue.muscles
    near = {mate for one in alike for mate in kinship.by_compartment[muscles[one].compartment]}
    near |= {other for one in alike for other in kinship.lookalikes.get(one, ())}
    near |= {mate for one in alike for mate in kinship.by_region[muscles[one].region]}
    for muscle in syllabus.muscles:
        trait = syllabus.traits(muscle)[relation]
        if muscle in near and trait.sure and value not in trait.possible:
            yield muscle


def _ask(syllabus: Syllabus, relation: Relation, value: str, odd: str) -> Ask:
    claims = claims_of(syllabus, relation, Unit(odd))
    lacking = (
        muscle for muscle in syllabus.catalogue.muscles if value not in syllabus.traits(muscle)[relation].sure
    )
    return Ask(
        family="odd_one_out",
        direction=f"by_{relation}",
        subject=value,
        relation=relation,
        kind="muscle",
        key=(odd,),
        barred=frozenset(lacking),
        facts=tuple(dict.fromkeys(claim.id for claim in claims if claim.certain)),
        muscles=(odd,),
        value=value,
        stem=_STEMS[relation],
        pick=fitting_company,
        tell=_reason,
        tell_why=_why,
    )


def _reason(syllabus: Syllabus, ask: Ask, muscle: str) -> Reason:
    if ask.relation == "crossing":
        return reason_of_joint(syllabus, Unit(muscle), ask.value)
    return reason_of_unit(syllabus, ask.relation, Unit(muscle), focus=ask.value)


def _why(syllabus: Syllabus, ask: Ask) -> Reason:
    """The shared property by name, then what the odd one has instead."""
    odd = _reason(syllabus, ask, ask.key[0])
    shared = f"{_SHARED_AS[ask.relation]} {value_text(syllabus, ask.relation, ask.value)}."
    return Reason(text=f"{shared} {odd.text}", facts=odd.facts, sources=odd.sources)
