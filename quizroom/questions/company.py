"""Three muscles that make a fourth the odd one out, by one property and no other."""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import combinations
from random import Random

from quizroom.questions.ask import Ask
from quizroom.questions.choose import is_fair
from quizroom.questions.claim import Relation
from quizroom.questions.distractors import candidates
from quizroom.questions.ranks import Candidate
from quizroom.questions.syllabus import Syllabus
from quizroom.questions.traits import SHARED, Traits
from quizroom.questions.words import concept_text

_SIZE = 3
_CHOICE = 3
"""Fitting companies among which one is drawn."""
_NEAREST, _FURTHER = 5, 5
"""Muscles from which the three are taken: those nearest to the odd one, and some that are not."""


@dataclass(frozen=True, slots=True)
class _Guest:
    """A muscle at the table: its traits, and the words of its name."""

    traits: Traits
    words: frozenset[str]


def fitting_company(syllabus: Syllabus, ask: Ask, random: Random) -> Sequence[Candidate] | None:
    """The nearest three muscles among which the odd one is alone odd; None if there are none."""
    # Whether there is a fair three must not hang on chance, only which of several is taken.
    ranked = candidates(syllabus, ask, Random(ask.id))  # noqa: S311 -- repeatable, not secret
    further = ranked[_NEAREST:]
    found = [*ranked[:_NEAREST], *further[:: max(1, len(further) // _FURTHER)][:_FURTHER]]
    fitting: list[tuple[Candidate, ...]] = []
    guests = {muscle: _guest(syllabus, muscle) for muscle in (ask.key[0], *(one for one, _ in found))}
    for three in combinations(found, _SIZE):
        four = [guests[muscle] for muscle in (ask.key[0], *(one for one, _ in three))]
        if _is_one_way_odd(ask.relation, four) and is_fair(syllabus, ask, three):
            fitting.append(three)
        if len(fitting) == _CHOICE:
            break
    return random.choice(fitting) if fitting else None


def _guest(syllabus: Syllabus, muscle: str) -> _Guest:
    words = concept_text(syllabus.words, "muscle", muscle).split()
    return _Guest(syllabus.traits(muscle), frozenset(words))


def _is_one_way_odd(declared: Relation, four: Sequence[_Guest]) -> bool:
    """Whether the first is odd by the declared property alone, and none of the others by any."""
    if _words_single_out(four):
        return False
    if any(_is_odd(relation, four) for relation in SHARED if relation != declared):
        return False
    return not any(_may_be_odd(relation, place, four) for relation in SHARED for place in range(1, len(four)))


def _may_be_odd(relation: Relation, place: int, four: Sequence[_Guest]) -> bool:
    """Whether by any reading all others may share a value that the one at the place may lack."""
    others = [guest.traits[relation].possible for other, guest in enumerate(four) if other != place]
    return not others[0].intersection(*others[1:]) <= four[place].traits[relation].sure


def _is_odd(relation: Relation, four: Sequence[_Guest]) -> bool:
    """Whether by the standard account the last three share a value that the first lacks."""
    shared = four[1].traits[relation].sure.intersection(*(guest.traits[relation].sure for guest in four[2:]))
    return not shared <= four[0].traits[relation].possible


def _words_single_out(four: Sequence[_Guest]) -> bool:
    """Whether all but one have a word in their names."""
    for place in range(len(four)):
        others = [guest.words for other, guest in enumerate(four) if other != place]
        if not others[0].intersection(*others[1:]) <= four[place].words:
            return True
    return False
