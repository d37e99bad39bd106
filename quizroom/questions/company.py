"""Three muscles that make a fourth the odd one out, by one property and no other."""

from collections.abc import Sequence
from itertools import combinations
from random import Random

from quizroom.questions.ask import Ask
from quizroom.questions.choose import is_fair
from quizroom.questions.claim import Relation
from quizroom.questions.distractors import candidates
from quizroom.questions.ranks import Candidate
from quizroom.questions.syllabus import Syllabus
from quizroom.questions.traits import SHARED
from quizroom.questions.words import concept_text

_SIZE = 3
_LOOKED_AT = 8
"""Nearest muscles from which the three are taken."""


def fitting_company(syllabus: Syllabus, ask: Ask, random: Random) -> Sequence[Candidate] | None:
    """The nearest three muscles among which the odd one is alone odd; None if there are none."""
    found = candidates(syllabus, ask, random)[:_LOOKED_AT]
    for three in combinations(found, _SIZE):
        if _is_one_way_odd(syllabus, ask, three) and is_fair(syllabus, ask, three):
            return three
    return None


def _is_one_way_odd(syllabus: Syllabus, ask: Ask, three: Sequence[Candidate]) -> bool:
    odd = ask.key[0]
    four = (odd, *(muscle for muscle, _ in three))
    if any(_words_single_out(syllabus, one, four) for one in four):
        return False
    if any(_may_be_odd(syllabus, relation, one, four) for relation in SHARED for one in four[1:]):
        return False
    return not any(_is_odd(syllabus, relation, four) for relation in SHARED if relation != ask.relation)


def _may_be_odd(syllabus: Syllabus, relation: Relation, one: str, four: Sequence[str]) -> bool:
    """Whether by any reading all others may share a value that the one may lack."""
    traits = {muscle: syllabus.traits(muscle)[relation] for muscle in four}
    others = (traits[muscle].possible for muscle in four if muscle != one)
    return bool(frozenset.intersection(*others) - traits[one].sure)


def _is_odd(syllabus: Syllabus, relation: Relation, four: Sequence[str]) -> bool:
    """Whether by the standard account the last three share a value that the first lacks."""
    first, *others = (syllabus.traits(muscle)[relation] for muscle in four)
    return bool(frozenset.intersection(*(trait.sure for trait in others)) - first.possible)


def _words_single_out(syllabus: Syllabus, one: str, four: Sequence[str]) -> bool:
    """Whether all others have a word in their names that the one lacks."""
    words = {muscle: set(concept_text(syllabus.words, "muscle", muscle).split()) for muscle in four}
    others = (words[muscle] for muscle in four if muscle != one)
    return bool(set.intersection(*others) - words[one])
