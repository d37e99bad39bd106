"""Look-alike: a fact that holds for one of several terms that students mix up."""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import replace

from quizroom.knowledge.model import LookAlike
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
_SET_KIND = {"landmark": "landmark", "muscle": "muscle", "nerve": "nerve", "artery": "artery"}


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
    leads = tuple(
        member
        for lookalike in syllabus.catalogue.lookalikes.values()
        if _SET_KIND.get(lookalike.kind) == ask.kind and ask.key[0] in lookalike.members
        for member in lookalike.members
        if member not in ask.barred and member not in ask.key and _is_told_apart(syllabus, ask, lookalike)
    )
    if leads:
        direction = f"{ask.family}:{ask.direction}"
        yield replace(
            ask, family="look_alike", direction=direction, formats=("one_best",), leads=leads, wording=""
        )


def _is_told_apart(syllabus: Syllabus, ask: Ask, lookalike: LookAlike) -> bool:
    """Whether the members are all known, so that the wrong ones have a reason."""
    known = syllabus.catalogue.muscles
    return ask.kind != "muscle" or all(member in known for member in lookalike.members)
