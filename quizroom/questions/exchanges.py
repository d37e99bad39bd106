"""Wrong options exchanged for others, so that the key does not stand out by its length."""

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import chain

from quizroom.questions.ask import Ask
from quizroom.questions.cues import is_uneven_beside, stands_out
from quizroom.questions.ranks import Candidate, teaching_sources
from quizroom.questions.syllabus import Syllabus
from quizroom.questions.words import concept_text

_FIRST_EXCHANGES = 2
"""Exchanges from which a second one is tried, where one does not make the lengths alike."""


@dataclass(frozen=True, slots=True)
class _Lengths:
    """The letters of a key, and of all that may stand beside it: each text is looked up once."""

    key: int
    of: Mapping[str, int]

    def beside(self, chosen: Iterable[Candidate]) -> list[int]:
        return [self.of[concept] for concept, _ in chosen]


def no_place_for(syllabus: Syllabus, ask: Ask, chosen: Iterable[Candidate]) -> frozenset[str]:
    """What may not stand beside the key and the chosen: themselves, and all that overlaps with them."""
    taken = (*ask.key, *(concept for concept, _ in chosen))
    if ask.unit is None:
        return frozenset(taken)
    overlap = syllabus.tables[ask.relation].overlap
    return frozenset[str]().union(*map(overlap, taken))


def exchange_last(
    syllabus: Syllabus, ask: Ask, chosen: Sequence[Candidate], better: Iterable[Candidate]
) -> list[Candidate]:
    """The last of the chosen replaced by the first better one that fits beside the rest."""
    rest = chosen[:-1]
    barred = no_place_for(syllabus, ask, rest)
    found = next((one for one in better if one[0] not in barred), None)
    return list(chosen) if found is None else [*rest, found]


def exchange_for_length(
    syllabus: Syllabus,
    ask: Ask,
    chosen: list[Candidate],
    found: Sequence[Candidate],
    is_fair: Callable[[Sequence[Candidate]], bool],
) -> list[Candidate]:
    """One option or two exchanged for others if the key stands out by its length, or is short beside them.

    `is_fair` says whether a choice is so, apart from lengths. As they were if nothing fair is better.
    """
    if not chosen or not is_uneven(syllabus, ask, chosen):
        return chosen
    lengths = _lengths(syllabus, ask, (*chosen, *found))
    exchanges = list(_exchanges(syllabus, ask, chosen, found))
    wished = _even(lengths, exchanges)
    twice = _even(lengths, _second_exchanges(syllabus, ask, lengths, exchanges, found))
    needed = _not_standing_out(lengths, exchanges if stands_out(lengths.key, lengths.beside(chosen)) else ())
    return next(filter(is_fair, chain(wished, twice, needed)), chosen)


def is_uneven(syllabus: Syllabus, ask: Ask, chosen: Sequence[Candidate]) -> bool:
    """Whether the key is noticeably longer or shorter than the options are."""
    lengths = _lengths(syllabus, ask, chosen)
    return is_uneven_beside(lengths.key, lengths.beside(chosen))


def key_stands_out(syllabus: Syllabus, ask: Ask, chosen: Sequence[Candidate]) -> bool:
    """Whether the key is noticeably longer than the options are."""
    lengths = _lengths(syllabus, ask, chosen)
    return stands_out(lengths.key, lengths.beside(chosen))


def _lengths(syllabus: Syllabus, ask: Ask, options: Iterable[Candidate]) -> _Lengths:
    words, kind = syllabus.words, ask.kind
    of = {concept: len(concept_text(words, kind, concept)) for concept, _ in options}
    return _Lengths(len(concept_text(words, kind, ask.key[0])), of)


def _even(lengths: _Lengths, choices: Iterable[list[Candidate]]) -> Iterator[list[Candidate]]:
    return (one for one in choices if not is_uneven_beside(lengths.key, lengths.beside(one)))


def _not_standing_out(lengths: _Lengths, choices: Iterable[list[Candidate]]) -> Iterator[list[Candidate]]:
    return (one for one in choices if not stands_out(lengths.key, lengths.beside(one)))


def _second_exchanges(
    syllabus: Syllabus,
    ask: Ask,
    lengths: _Lengths,
    exchanges: Sequence[list[Candidate]],
    found: Sequence[Candidate],
) -> Iterator[list[Candidate]]:
    """Choices in which two of the chosen are others that teach as well, from the most even on."""
    teaching = teaching_sources(ask.family)
    close = [one for one in found if one[1] in teaching]
    for first in sorted(exchanges, key=lambda one: _unevenness(lengths, one))[:_FIRST_EXCHANGES]:
        yield from _exchanges(syllabus, ask, first, close)


def _unevenness(lengths: _Lengths, chosen: Sequence[Candidate]) -> float:
    """How far the mean length of the wrong options is from that of the key."""
    others = lengths.beside(chosen)
    return abs(sum(others) / len(others) - lengths.key)


def _exchanges(
    syllabus: Syllabus, ask: Ask, chosen: Sequence[Candidate], found: Sequence[Candidate]
) -> Iterator[list[Candidate]]:
    """All choices in which one of the chosen is another, the last of them first."""
    teaching = [one for one in found if one[1] != "same_region"]
    for place in range(len(chosen) - 1, -1, -1):
        rest = [*chosen[:place], *chosen[place + 1 :]]
        barred = no_place_for(syllabus, ask, rest)
        yield from ([*rest, one] for one in teaching if one[0] not in barred)
