"""What an answer tells of the memory for a fact in one direction. Nobody is asked to rate themselves.

Right or wrong, how sure, and how long it took are evidence enough: an answer that came before the question
could be read tells nothing, a slow or unsure one that is right tells less.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import datetime
from math import comb, factorial

from quizroom.marking import rows_right
from quizroom.questions.again import plain_direction
from quizroom.questions.model import Item
from quizroom.room.state import Answer
from quizroom.second_look.memory import Evidence

WORDS_PER_MINUTE = 238
"""Silent reading of English non-fiction (Brysbaert 2019, 190 studies)."""
SHORTEST_READING_MS = 500
UNSURE = 0.5
"""A right answer that was slow or unsure counts as if half of those who do not know would give it too."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Said:
    """An answer with what it is judged by. `mark` is None where only a person could tell."""

    answer: Answer | None
    mark: float | None
    took_ms: int
    certainty: int | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Sighting:
    """A fact was asked in one direction, and its record was seen. No `evidence`: the answer told nothing."""

    fact: str
    direction: str
    at: datetime
    evidence: Evidence | None
    missed: bool
    """Whether it was not answered in full."""
    muscle: str
    seconds: int
    origin: str
    """What to look up to see the item again."""


def sightings_of(item: Item, said: Said, *, at: datetime, origin: str, fact: str = "") -> Iterator[Sighting]:
    """One sighting for what the item asks; of a matching one for each row.

    Who was asked on account of one `fact` is told about that one alone, though the item may rest on a part of
    it, or on more.
    """
    muscle = item.muscles[0] if item.muscles else item.subject
    if fact:
        yield replace(_sighting(item, ((), muscle), said, at=at, origin=origin), fact=fact)
    elif item.format == "matching":
        for row, facts in enumerate(row_facts(item)):
            about = (facts, item.stems[row].concept)
            yield _sighting(item, about, _row(item, said, row), at=at, origin=origin)
    else:
        yield _sighting(item, (item.facts, muscle), said, at=at, origin=origin)


def fact_of(item: Item, facts: Sequence[str]) -> str:
    """One name for the facts that are asked together; of none, a name for the question."""
    if item.by_host:
        return item.subject
    if facts:
        return "+".join(sorted(facts))
    key = "+".join(sorted(option.concept for option in item.options if option.source == "key"))
    return f"{item.family}/{item.subject}/-/{key}"


def row_facts(item: Item) -> tuple[tuple[str, ...], ...]:
    """Which of a matching's facts each row asks for."""
    return tuple(
        tuple(fact for fact in item.facts if fact in stem.reason.facts)
        or (f"{stem.concept}/{item.direction}",)
        for stem in item.stems
    )


def chance_by_guessing(item: Item) -> float:
    """How likely somebody who knows nothing is to be right in full; 0 for typed words."""
    options = len(item.options)
    match item.format:
        case "one_best" | "matching":
            return 1 / options
        case "pick_n":
            return 1 / comb(options, item.pick)
        case "ordering":
            return 1 / factorial(options)
        case "typed" | "free_list":
            return 0.0


def is_rapid(item: Item, took_ms: int) -> bool:
    """Whether an answer came too fast to be one: under a quarter of the reading time, or half a second.

    Source: rapid guessing as in Wise & Kong 2005 (from memory); the limit is the trade's own.
    """
    words = sum(len(text.split()) for text in (item.stem, *(option.text for option in item.options)))
    return took_ms < max(SHORTEST_READING_MS, words / WORDS_PER_MINUTE * 60_000 / 4)


def _sighting(
    item: Item, about: tuple[Sequence[str], str], said: Said, *, at: datetime, origin: str
) -> Sighting:
    facts, muscle = about
    return Sighting(
        fact=fact_of(item, facts),
        direction=plain_direction(item.direction),
        at=at,
        evidence=_evidence(item, said),
        missed=said.answer is None or (said.mark is not None and said.mark < 1.0),
        muscle=muscle.partition("/")[0],
        seconds=item.seconds,
        origin=origin,
    )


def _evidence(item: Item, said: Said) -> Evidence | None:
    if said.mark is None or is_rapid(item, said.took_ms):
        return None
    by_guessing = chance_by_guessing(item)
    if said.mark < 1.0:
        # With part of the marks it is the softer a miss: who knows it may have slipped.
        return Evidence(right=False, by_recall=1.0 - said.mark / 2)
    if said.certainty == 1 or said.took_ms > item.seconds * 1000:
        by_guessing += (1.0 - by_guessing) * UNSURE
    return Evidence(right=True, by_guessing=by_guessing)


def _row(item: Item, said: Said, row: int) -> Said:
    """What was said in one row of a matching."""
    if said.answer is None:
        return said
    right = rows_right(item, said.answer)[row]
    return Said(
        answer=said.answer,
        mark=1.0 if right else 0.0,
        took_ms=said.took_ms,
        certainty=said.certainty,
    )
