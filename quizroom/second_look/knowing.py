"""What a player knows of each fact: the sightings of it, added up."""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, replace
from datetime import datetime

from quizroom.second_look.memory import NEW, Memory, after_look, recall
from quizroom.second_look.sighting import Sighting

_HOUR_S = 3600.0
_AT_A_BREATH = 16
"""Sightings are added up in a tenth of a millisecond each."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Known:
    """A fact as one player knows it, with a memory for each direction in which it was asked.

    Whoever is asked one way sees the whole record: so the time since the last look runs for all directions
    alike, while each has a half-life of its own.
    """

    fact: str
    muscle: str
    seconds: int
    """Time for one look at it."""
    memories: Mapping[str, Memory]
    seen_at: datetime
    missed: bool
    """Whether it was ever missed: only then does it come back."""
    failed: bool
    """Whether it was missed when it was asked last."""
    origins: Mapping[str, str]
    """For each direction where the item lies that asked it last."""


def known_facts(
    sightings: Iterable[Sighting], breathe: Callable[[], None] = lambda: None
) -> dict[str, Known]:
    """All facts that were asked, by name; `breathe` is called now and then."""
    known: dict[str, Known] = {}
    ordered = sorted(sightings, key=lambda one: (one.at, one.origin, one.fact))
    for number, sighting in enumerate(ordered):
        if number % _AT_A_BREATH == 0:
            breathe()
        known[sighting.fact] = after_sighting(known.get(sighting.fact), sighting)
    return known


def after_sighting(known: Known | None, sighting: Sighting) -> Known:
    """The fact as it is known after one more sighting; None: it was never asked before."""
    before = {} if known is None else dict(known.memories)
    origins = {} if known is None else dict(known.origins)
    # What was never asked here was learned somewhere: as if it were even odds now.
    hours = NEW.hours if known is None else hours_between(known.seen_at, sighting.at)
    memory = before.get(sighting.direction, NEW)
    if sighting.evidence is not None:
        memory = after_look(memory, hours, sighting.evidence)
    memories = {**before, sighting.direction: memory}
    origins[sighting.direction] = sighting.origin
    fresh = Known(
        fact=sighting.fact,
        muscle=sighting.muscle,
        seconds=sighting.seconds,
        memories=memories,
        seen_at=sighting.at,
        missed=sighting.missed,
        failed=sighting.missed,
        origins=origins,
    )
    return fresh if known is None else replace(fresh, missed=known.missed or sighting.missed)


def recall_of(known: Known, at: datetime) -> float:
    """The predicted chance to recall the fact, over the directions in which it was asked."""
    hours = hours_between(known.seen_at, at)
    return sum(recall(memory, hours) for memory in known.memories.values()) / len(known.memories)


def weakest(known: Known) -> tuple[str, Memory]:
    """The direction that is forgotten first, and its memory."""
    return min(known.memories.items(), key=lambda pair: (pair[1].hours, pair[0]))


def hours_between(earlier: datetime, later: datetime) -> float:
    """Hours from one time to the other, not less than 0."""
    return max(0.0, (later - earlier).total_seconds() / _HOUR_S)
