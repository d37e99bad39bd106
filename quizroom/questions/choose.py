"""Choosing wrong options that stand fairly beside the key."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from functools import partial
from itertools import chain
from random import Random
from types import MappingProxyType

from quizroom.questions.ask import Ask
from quizroom.questions.cues import clangs
from quizroom.questions.distractors import candidates
from quizroom.questions.exchanges import exchange_for_length, exchange_last, key_stands_out, no_place_for
from quizroom.questions.model import DistractorSource, Family
from quizroom.questions.ranks import Candidate
from quizroom.questions.syllabus import Syllabus
from quizroom.questions.words import concept_text

PREFERRED_WRONG = 3
FEWEST_WRONG = 2
_SECOND_TRIES = 2
"""Orders in which candidates are tried again, the same for every seed, so that few asks hang on chance."""
_LONGEST_LOOK = 40
"""Candidates looked at before an ask is given up."""
_MERELY_NEAR: frozenset[DistractorSource] = frozenset(("same_region",))
_WEAK: Mapping[Family, frozenset[DistractorSource]] = MappingProxyType(
    {"antagonist": _MERELY_NEAR | {"same_joint", "other_joint"}}
)
"""Sources from which not all wrong options of an item may come: opposites are not mixed up with movements of
other joints.
"""
_MOVEMENTS = ("movement", "action")


def wrong_options(syllabus: Syllabus, ask: Ask, random: Random) -> tuple[Candidate, ...] | None:
    """Three wrong options, or two rather than a third from nowhere in particular; None if none are fair.

    Fair: none may be true, none overlap, the key does not stand out by its length, and if the key echoes the
    question a wrong option does so too.
    """
    # Beside what a class chose there may be no fair options, though there are without it.
    for one in (ask, replace(ask, errors=())) if ask.errors else (ask,):
        tries = (Random(f"{ask.id}/{number}") for number in range(_SECOND_TRIES))  # noqa: S311 -- repeatable, not secret
        found = next(
            filter(None, (_fair_options(syllabus, one, order) for order in chain((random,), tries))), None
        )
        if found is not None:
            return found
    return None


def _fair_options(syllabus: Syllabus, ask: Ask, random: Random) -> tuple[Candidate, ...] | None:
    found = candidates(syllabus, ask, random)[:_LONGEST_LOOK]
    chosen = _first_fit(syllabus, ask, found, PREFERRED_WRONG)
    chosen = _without_padding(ask, chosen)
    chosen = _with_an_echo(syllabus, ask, chosen, found)
    chosen = exchange_for_length(
        syllabus, ask, chosen, found, partial(_is_fair_apart_from_length, syllabus, ask)
    )
    if len(chosen) < FEWEST_WRONG or _is_padding(ask, chosen) or not is_fair(syllabus, ask, chosen):
        return None
    return tuple(chosen)


def wrong_for_set(
    syllabus: Syllabus, ask: Ask, random: Random, wanted: int, fewest: int
) -> tuple[Candidate, ...] | None:
    """Wrong options for a set of several keys, at least `fewest`."""
    found = candidates(syllabus, ask, random)
    chosen = _with_an_echo(syllabus, ask, _first_fit(syllabus, ask, found, wanted), found)
    if len(chosen) >= fewest and _echoes_are_fair(syllabus, ask, chosen):
        return tuple(chosen)
    return wrong_for_set(syllabus, replace(ask, errors=()), random, wanted, fewest) if ask.errors else None


def _first_fit(syllabus: Syllabus, ask: Ask, found: Iterable[Candidate], wanted: int) -> list[Candidate]:
    chosen: list[Candidate] = []
    barred = no_place_for(syllabus, ask, chosen)
    for candidate in found:
        if len(chosen) == wanted:
            break
        if candidate[0] not in barred:
            chosen.append(candidate)
            barred = no_place_for(syllabus, ask, chosen)
    return chosen


def _without_padding(ask: Ask, chosen: Sequence[Candidate]) -> list[Candidate]:
    """Without a third that is merely of the same region; the movements of one joint are all alike near."""
    if ask.kind in _MOVEMENTS or len(chosen) < PREFERRED_WRONG or chosen[-1][1] != "same_region":
        return list(chosen)
    return list(chosen[:FEWEST_WRONG])


def _is_padding(ask: Ask, chosen: Sequence[Candidate]) -> bool:
    """Whether hardly anybody would get the item wrong.

    No wrong option is likely to be taken for the key, or one of two is merely of the same region.
    """
    weak = _WEAK.get(ask.family, _MERELY_NEAR)
    found = [source in weak for _, source in chosen]
    return all(found) or (len(chosen) == FEWEST_WRONG and any(one[1] in _MERELY_NEAR for one in chosen))


def _with_an_echo(
    syllabus: Syllabus, ask: Ask, chosen: list[Candidate], found: Sequence[Candidate]
) -> list[Candidate]:
    """The last option exchanged for one that echoes the question, if only the key does."""
    if _echoes_are_fair(syllabus, ask, chosen):
        return chosen
    stem = syllabus.stems(ask.stem)
    echoing = (one for one in found if clangs(stem, syllabus.stems(_text(syllabus, ask, one[0]))))
    return exchange_last(syllabus, ask, chosen, echoing)


def is_fair(syllabus: Syllabus, ask: Ask, chosen: Sequence[Candidate]) -> bool:
    """Whether the key stands out neither by its length nor by an echo, and a wanted look-alike is there."""
    if not chosen or key_stands_out(syllabus, ask, chosen):
        return False
    return _is_fair_apart_from_length(syllabus, ask, chosen)


def _is_fair_apart_from_length(syllabus: Syllabus, ask: Ask, chosen: Sequence[Candidate]) -> bool:
    has_lead = not ask.leads or any(concept in ask.leads for concept, _ in chosen)
    return has_lead and _echoes_are_fair(syllabus, ask, chosen)


def _echoes_are_fair(syllabus: Syllabus, ask: Ask, chosen: Sequence[Candidate]) -> bool:
    """Whether few of the keys echo the question, or a wrong option does so too."""
    stem = syllabus.stems(ask.stem)
    echoing = sum(clangs(stem, syllabus.stems(_text(syllabus, ask, key))) for key in ask.key)
    if echoing <= len(ask.key) // 2:
        return True
    return any(clangs(stem, syllabus.stems(_text(syllabus, ask, concept))) for concept, _ in chosen)


def _text(syllabus: Syllabus, ask: Ask, concept: str) -> str:
    return concept_text(syllabus.words, ask.kind, concept)
