"""Look-alike: a fact that holds for one of several terms that students mix up."""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import replace

from quizroom.questions.ask import Ask
from quizroom.questions.families.action import action_asks
from quizroom.questions.families.artery import artery_asks
from quizroom.questions.families.insertion import insertion_asks
from quizroom.questions.families.joint import joint_asks
from quizroom.questions.families.nerve import nerve_asks
from quizroom.questions.families.origin import origin_asks
from quizroom.questions.families.prime_mover import prime_mover_asks
from quizroom.questions.meanings import meaning_asks
from quizroom.questions.model import Family
from quizroom.questions.places import place_asks
from quizroom.questions.syllabus import Syllabus

_SOURCES: Mapping[Family, Callable[[Syllabus], Iterator[Ask]]] = {
    "origin": origin_asks,
    "insertion": insertion_asks,
    "action": action_asks,
    "prime_mover": prime_mover_asks,
    "joint": joint_asks,
    "nerve": nerve_asks,
    "artery": artery_asks,
}
_KINDS = ("landmark", "muscle", "nerve", "artery")


def look_alike_asks(syllabus: Syllabus) -> Iterator[Ask]:
    """Bones of look-alike landmarks, meanings of movements, and facts that tell one member from the others.

    Only what the course examines in some family is asked here.
    """
    examined = set(syllabus.course.families)
    if examined & {"origin", "insertion"}:
        yield from place_asks(syllabus)
    if examined & {"action", "prime_mover"}:
        yield from meaning_asks(syllabus)
    for family, asks in _SOURCES.items():
        if family in examined:
            yield from (alike for ask in asks(syllabus) for alike in _against_lookalikes(syllabus, ask))


def _against_lookalikes(syllabus: Syllabus, ask: Ask) -> Iterator[Ask]:
    """The ask with the other members of a set of its key as its first wrong options."""
    if ask.kind not in _KINDS:
        return
    others = syllabus.kinship.lookalikes.get(ask.key[0], ())
    leads = tuple(
        one for one in others if one not in (*ask.barred, *ask.key) and _has_reason(syllabus, ask, one)
    )
    if leads:
        yield replace(
            ask,
            family="look_alike",
            direction=f"{ask.family}:{ask.direction}",
            formats=("one_best",),
            leads=leads,
            wording="",
        )


def _has_reason(syllabus: Syllabus, ask: Ask, member: str) -> bool:
    """Whether something can be told of a muscle in the relation that is asked about."""
    if ask.kind != "muscle":
        return True
    claims = syllabus.tables["action" if ask.relation == "prime" else ask.relation].by_muscle.get(member, ())
    return any(claim.usual for claim in claims)
