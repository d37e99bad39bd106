"""Three muscles that make a fourth the odd one out, by one property and no other."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import chain, combinations, islice
from random import Random

from quizroom.questions.ask import Ask
from quizroom.questions.choose import is_fair
from quizroom.questions.claim import Relation
from quizroom.questions.distractors import candidates
from quizroom.questions.exchanges import is_uneven
from quizroom.questions.model import DistractorSource
from quizroom.questions.ranks import Candidate, teaching_sources
from quizroom.questions.syllabus import Syllabus
from quizroom.questions.traits import SHARED
from quizroom.questions.words import concept_text

_SIZE = 3
_CHOICE = 8
"""Fitting companies that are looked at, of which one is drawn."""
_NEAREST = 12
"""Muscles from which the three are taken: those that are most mixed up with the odd one."""


@dataclass(frozen=True, slots=True)
class _Guest:
    """A muscle at the table, with a bit for each value that it surely has, and that it may have.

    The words of its name are values like any other: three of four must not share one either.
    """

    sure: int
    possible: int


@dataclass(frozen=True, slots=True)
class _Guests:
    by_muscle: Mapping[str, _Guest]
    declared: Mapping[Relation, int]


def fitting_company(syllabus: Syllabus, ask: Ask, random: Random) -> Sequence[Candidate] | None:
    """Three near muscles among which the odd one is alone odd; None if there are none."""
    fitting = fitting_companies(syllabus, ask)
    return random.choice(fitting) if fitting else None


def fitting_companies(syllabus: Syllabus, ask: Ask) -> Sequence[tuple[Candidate, ...]]:
    """The threes among which one is drawn; remembered, since whether there are any must not hang on chance.

    Those beside which the name of the odd one is neither long nor short come alone, if there are any.
    """
    if ask.id not in (known := _remembered(syllabus)):
        rest = _fitting(syllabus, ask)
        fitting = tuple(islice(rest, _CHOICE))
        even = (three for three in chain(fitting, rest) if not is_uneven(syllabus, ask, three))
        known[ask.id] = tuple(islice(even, _CHOICE)) or fitting
    return known[ask.id]


@lru_cache(maxsize=8)
def _remembered(_: Syllabus) -> dict[str, Sequence[tuple[Candidate, ...]]]:
    return {}


def _fitting(syllabus: Syllabus, ask: Ask) -> Iterator[tuple[Candidate, ...]]:
    ranked = candidates(syllabus, ask, Random(ask.id))  # noqa: S311 -- repeatable, not secret
    guests = _guests(syllabus)
    declared, odd = guests.declared[ask.relation], guests.by_muscle[ask.key[0]]
    for three in _threes(ranked, teaching_sources(ask.family)):
        others = [guests.by_muscle[muscle] for muscle, _ in three]
        if _is_one_way_odd(declared, (odd, *others)) and is_fair(syllabus, ask, three):
            yield three


def _threes(
    ranked: Sequence[Candidate], teaching: frozenset[DistractorSource]
) -> Iterator[tuple[Candidate, ...]]:
    """Threes of those that are mixed up with the odd one; one that is merely near it would be padding."""
    return combinations([one for one in ranked if one[1] in teaching][:_NEAREST], _SIZE)


@lru_cache(maxsize=8)
def _guests(syllabus: Syllabus) -> _Guests:
    """All muscles with their values as bits; `declared` has the bits of each property."""
    bits: dict[tuple[str, str], int] = {}

    def as_bits(relation: str, values: Iterable[str]) -> int:
        return sum(bits.setdefault((relation, value), 1 << len(bits)) for value in values)

    by_muscle: dict[str, _Guest] = {}
    for muscle in syllabus.catalogue.muscles:
        traits = syllabus.traits(muscle)
        words = as_bits("word", set(concept_text(syllabus.words, "muscle", muscle).split()))
        by_muscle[muscle] = _Guest(
            sure=words + sum(as_bits(relation, traits[relation].sure) for relation in SHARED),
            possible=words + sum(as_bits(relation, traits[relation].possible) for relation in SHARED),
        )
    declared = {
        relation: sum(bit for (kind, _), bit in bits.items() if kind == relation) for relation in SHARED
    }
    return _Guests(by_muscle, declared)


def _is_one_way_odd(declared: int, four: Sequence[_Guest]) -> bool:
    """Whether the first is odd by the declared property alone, and none of the others by any.

    The first is odd where the standard account says so; the others must not be odd by any reading.
    """
    odd, one, two, three = four
    if one.sure & two.sure & three.sure & ~odd.possible & ~declared:
        return False
    return not (
        odd.possible & two.possible & three.possible & ~one.sure
        or odd.possible & one.possible & three.possible & ~two.sure
        or odd.possible & one.possible & two.possible & ~three.sure
    )
