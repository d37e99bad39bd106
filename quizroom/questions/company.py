"""Three muscles that make a fourth the odd one out, by one property and no other."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import combinations
from random import Random

from quizroom.questions.ask import Ask
from quizroom.questions.choose import is_fair
from quizroom.questions.claim import Relation
from quizroom.questions.distractors import candidates
from quizroom.questions.model import DistractorSource
from quizroom.questions.ranks import Candidate, teaching_sources
from quizroom.questions.syllabus import Syllabus
from quizroom.questions.traits import SHARED
from quizroom.questions.words import concept_text

_SIZE = 3
_CHOICE = 3
"""Fitting companies among which one is drawn."""
_NEAREST, _FURTHER = 8, 4
"""Muscles from which the three are taken: those mixed up with the odd one, and some that are not."""


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
    # Whether there is a fair three must not hang on chance, only which of several is taken.
    ranked = candidates(syllabus, ask, Random(ask.id))  # noqa: S311 -- repeatable, not secret
    guests = _guests(syllabus)
    fitting: list[tuple[Candidate, ...]] = []
    for three in _threes(ranked, teaching_sources(ask.family)):
        four = [guests.by_muscle[muscle] for muscle in (ask.key[0], *(one for one, _ in three))]
        if _is_one_way_odd(guests.declared[ask.relation], four) and is_fair(syllabus, ask, three):
            fitting.append(three)
        if len(fitting) == _CHOICE:
            break
    return random.choice(fitting) if fitting else None


def _threes(
    ranked: Sequence[Candidate], teaching: frozenset[DistractorSource]
) -> Iterator[tuple[Candidate, ...]]:
    """Threes of those that are mixed up with the odd one; then two of these with one that is merely near."""
    near = [one for one in ranked if one[1] in teaching][:_NEAREST]
    others = [one for one in ranked if one[1] not in teaching]
    further = others[:: max(1, len(others) // _FURTHER)][:_FURTHER]
    yield from combinations(near, _SIZE)
    yield from ((*two, one) for two in combinations(near, _SIZE - 1) for one in further)


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
