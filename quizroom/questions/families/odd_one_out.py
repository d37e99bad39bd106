"""Odd one out: three muscles share a nerve, a group, a joint or a movement, and one does not.

The odd one is so by exactly one of these properties, and no property makes any of the others odd.
"""

from collections.abc import Iterator, Mapping
from functools import lru_cache

from quizroom.questions.ask import Ask
from quizroom.questions.claim import Relation
from quizroom.questions.company import fitting_companies, fitting_company
from quizroom.questions.explain import reason_of_joint, reason_of_unit, value_text
from quizroom.questions.kindred import kindred_ranks
from quizroom.questions.model import Reason
from quizroom.questions.ranks import Rank
from quizroom.questions.syllabus import Syllabus, Unit, claims_of
from quizroom.questions.traits import SHARED

_FEWEST = 3
_STEMS: Mapping[Relation, str] = {
    "nerve": "Three of these muscles have the same nerve. Which is the odd one out?",
    "compartment": "Three of these muscles belong to the same group. Which is the odd one out?",
    "crossing": "Three of these muscles cross the same joint. Which is the odd one out?",
    "action": "Three of these muscles produce the same movement. Which is the odd one out?",
}
_EXAMINED_IN: Mapping[Relation, frozenset[str]] = {
    "nerve": frozenset(("nerve",)),
    "compartment": frozenset(("compartment",)),
    "crossing": frozenset(("joint",)),
    "action": frozenset(("action", "prime_mover")),
}
_SHARED_AS: Mapping[Relation, str] = {
    "nerve": "The other three are supplied by",
    "compartment": "The other three belong to",
    "crossing": "The other three cross",
    "action": "The other three produce",
}


def odd_one_out_asks(syllabus: Syllabus) -> Iterator[Ask]:
    """All asks for an odd one out among muscles that lie near one another, by what the course examines."""
    for relation in SHARED:
        if _EXAMINED_IN[relation].isdisjoint(syllabus.course.families):
            continue
        for value, alike in _alike(syllabus, relation).items():
            lacking = frozenset(syllabus.catalogue.muscles) - alike
            for odd in _odd_ones(syllabus, relation, value, alike):
                ask = _ask(syllabus, relation, value, odd, lacking)
                if fitting_companies(syllabus, ask):
                    yield ask


def _alike(syllabus: Syllabus, relation: Relation) -> dict[str, frozenset[str]]:
    """The muscles that surely have a value, of values that enough muscles have."""
    groups: dict[str, set[str]] = {}
    for muscle in syllabus.catalogue.muscles:
        for value in sorted(syllabus.traits(muscle)[relation].sure):
            groups.setdefault(value, set()).add(muscle)
    on_list = syllabus.on_list
    return {value: frozenset(group) for value, group in groups.items() if len(group & on_list) >= _FEWEST}


def _odd_ones(syllabus: Syllabus, relation: Relation, value: str, alike: frozenset[str]) -> Iterator[str]:
    """Muscles that surely lack the value, with enough near them that have it."""
    for muscle in syllabus.muscles:
        trait = syllabus.traits(muscle)[relation]
        if not trait.sure or value in trait.possible:
            continue
        if len(alike & syllabus.on_list & _near(syllabus, muscle)) >= _FEWEST:
            yield muscle


@lru_cache(maxsize=2048)
def _near(syllabus: Syllabus, muscle: str) -> frozenset[str]:
    return frozenset(one for _, muscles in _ranks_of(syllabus, muscle) for one in muscles)


def _ask(syllabus: Syllabus, relation: Relation, value: str, odd: str, lacking: frozenset[str]) -> Ask:
    claims = claims_of(syllabus, relation, Unit(odd))
    return Ask(
        family="odd_one_out",
        direction=f"by_{relation}",
        subject=value,
        relation=relation,
        kind="muscle",
        key=(odd,),
        barred=lacking,
        facts=tuple(dict.fromkeys(claim.id for claim in claims if claim.certain)),
        muscles=(odd,),
        value=value,
        stem=_STEMS[relation],
        ranks=_ranks,
        pick=fitting_company,
        tell=_reason,
        tell_why=_why,
    )


def _ranks(syllabus: Syllabus, ask: Ask) -> Iterator[Rank]:
    """Those near the odd one; a nerve that they have in common in its region is a sibling of its nerve.

    Of nerves only those of its limb, of head and neck or of the trunk: a muscle of the thigh would be odd
    among three of the perineum at first sight.
    """
    odd = syllabus.catalogue.muscles[ask.key[0]]
    if ask.relation != "nerve":
        yield from _ranks_of(syllabus, odd.id)
        return
    here = frozenset(syllabus.kinship.of_area(odd.region))
    beside: Rank = ("sibling_nerve", syllabus.kinship.by_region[odd.region])
    for source, muscles in (*kindred_ranks(syllabus, odd.id), beside, *_ranks_of(syllabus, odd.id)):
        yield source, tuple(one for one in muscles if one in here)


def _ranks_of(syllabus: Syllabus, muscle: str) -> Iterator[Rank]:
    """Whatever is mixed up with the odd one, then its region and those beside it."""
    region = syllabus.catalogue.muscles[muscle].region
    yield from kindred_ranks(syllabus, muscle)
    yield "same_region", syllabus.kinship.by_region[region]
    yield "same_region", syllabus.kinship.beside_region.get(region, ())


def _reason(syllabus: Syllabus, ask: Ask, muscle: str) -> Reason:
    if ask.relation == "crossing":
        return reason_of_joint(syllabus, Unit(muscle), ask.value)
    return reason_of_unit(syllabus, ask.relation, Unit(muscle), focus=ask.value)


def _why(syllabus: Syllabus, ask: Ask) -> Reason:
    """The shared property by name, then what the odd one has instead."""
    odd = _reason(syllabus, ask, ask.key[0])
    shared = f"{_SHARED_AS[ask.relation]} {value_text(syllabus, ask.relation, ask.value)}."
    return Reason(text=f"{shared} {odd.text}", facts=odd.facts, sources=odd.sources)
