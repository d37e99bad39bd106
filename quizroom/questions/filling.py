"""Choosing what is asked in each cell of a blueprint: every cell gets its rounds, no fact comes twice.

A fact may be wanted by several cells: then whoever holds it makes room if it can be content with another
question. For questions that rest on one fact each, as nearly all do, this finds an arrangement whenever
there is one (augmenting paths: Berge 1957, from memory).
"""

from collections import Counter
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from itertools import islice

from quizroom.questions.ask import Ask
from quizroom.questions.formats import TYPED_ONE_IN
from quizroom.questions.model import Format, Item
from quizroom.questions.waiting import facts_told

_LOOKED_AT = 6
"""Questions among which the easiest or hardest is taken."""

Build = Callable[[Ask], Item | None]
Prefer = Callable[[Item], float]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Place:
    """A cell, or the rounds to warm up: what may be asked there, in the order of the draw."""

    name: str
    rounds: int
    asks: tuple[Ask, ...]


@dataclass(slots=True, kw_only=True)
class Filling:
    """What has been chosen so far. `chosen` is by the id of the ask, `holders` by fact."""

    build: Build
    prefer: Prefer | None
    """Lowest first, among questions that are otherwise equally good; None to let the draw decide."""
    typed: frozenset[Format] = frozenset()
    """The formats without options that are wanted for a third of the rounds."""
    thrifty: bool = False
    """Whether questions that rest on few facts go first, since there is little to spare."""
    chosen: dict[str, tuple[Place, Ask]] = field(default_factory=dict)
    holders: dict[str, str] = field(default_factory=dict)
    covered: Counter[str] = field(default_factory=Counter)
    told: Counter[str] = field(default_factory=Counter)


def fill(filling: Filling, places: tuple[Place, ...]) -> Place | None:
    """Give every place its rounds, the scarcest first; the place that could not be filled, if any."""
    for place in sorted(places, key=lambda one: len(one.asks)):
        for _ in range(place.rounds):
            if not _choose(filling, place, set()):
                return place
    while _cover_one_more(filling):
        pass
    return None


def chosen_in(filling: Filling, place: Place) -> list[Ask]:
    """What was chosen for a place."""
    return [ask for where, ask in filling.chosen.values() if where is place]


def hold(filling: Filling, item: Item) -> None:
    """Note an item that is fixed: its facts are never asked again."""
    filling.holders.update(dict.fromkeys(item.facts, ""))
    filling.covered.update(item.muscles)
    filling.told.update(facts_told(item))


def best_free(filling: Filling, place: Place) -> Ask | None:
    """The best question that is free: about the muscle shown least, then the one that is given away least."""
    fresh = [ask for ask in place.asks if filling.holders.keys().isdisjoint(ask.facts)]
    ranked = sorted(fresh, key=lambda ask: _drawback(filling, ask))
    fit = (ask for ask in ranked if filling.build(ask) is not None)
    first = next(fit, None)
    if first is None or filling.prefer is None:
        return first
    least = _drawback(filling, first)
    equals = [first, *(ask for ask in islice(fit, _LOOKED_AT - 1) if _drawback(filling, ask) == least)]
    return min(equals, key=lambda ask: _preference(filling, ask))


def _choose(filling: Filling, place: Place, visited: set[str]) -> bool:
    ask = best_free(filling, place)
    if ask is None:
        return _make_room(filling, place, visited)
    _take(filling, place, ask)
    return True


def _make_room(filling: Filling, place: Place, visited: set[str]) -> bool:
    """Take a question whose facts are held by others, if they all find something else."""
    for ask in place.asks:
        owners = {filling.holders.get(fact, "") for fact in ask.facts if fact in filling.holders}
        if visited.issuperset(ask.facts) or "" in owners or filling.build(ask) is None:
            continue
        visited.update(ask.facts)
        before = dict(filling.chosen)
        displaced = [_give_up(filling, owner) for owner in sorted(owners)]
        _take(filling, place, ask)
        if all(_choose(filling, where, visited) for where in displaced):
            return True
        _restore(filling, before)
    return False


def _cover_one_more(filling: Filling) -> bool:
    """Exchange one question for another of its cell that brings in a muscle not shown yet."""
    for ask_id, (place, ask) in tuple(filling.chosen.items()):
        seen = _shown(filling)
        if all(filling.covered[muscle] == 1 for muscle in ask.muscles):
            continue
        before = dict(filling.chosen)
        _give_up(filling, ask_id)
        for other in _uncovered(filling, place):
            _take(filling, place, other)
            if _shown(filling) > seen:
                return True
            _give_up(filling, other.id)
        _restore(filling, before)
    return False


def _uncovered(filling: Filling, place: Place) -> Iterator[Ask]:
    for ask in place.asks:
        is_free = filling.holders.keys().isdisjoint(ask.facts)
        if is_free and not filling.covered[ask.muscles[0]] and filling.build(ask) is not None:
            yield ask


def _shown(filling: Filling) -> int:
    return sum(times > 0 for times in filling.covered.values())


def _drawback(filling: Filling, ask: Ask) -> tuple[int, int, int, bool, bool]:
    """What speaks against a question, the worst first.

    Facts used up, its muscle shown before, its key shown, no way to type its answer, its fact told.
    """
    return (
        len(ask.facts) if filling.thrifty else 0,
        filling.covered[ask.muscles[0]],
        sum(filling.covered[muscle] > 0 for muscle in ask.muscles),
        _wants_typed(filling) and filling.typed.isdisjoint(ask.formats),
        any(filling.told[fact] for fact in ask.facts),
    )


def _wants_typed(filling: Filling) -> bool:
    can_be_typed = sum(not filling.typed.isdisjoint(ask.formats) for _, ask in filling.chosen.values())
    return bool(filling.typed) and can_be_typed * TYPED_ONE_IN <= len(filling.chosen)


def _preference(filling: Filling, ask: Ask) -> float:
    item = filling.build(ask)
    return filling.prefer(item) if item is not None and filling.prefer is not None else 0.0


def _take(filling: Filling, place: Place, ask: Ask) -> None:
    filling.chosen[ask.id] = (place, ask)
    filling.holders.update(dict.fromkeys(ask.facts, ask.id))
    _count(filling, ask, 1)


def _give_up(filling: Filling, ask_id: str) -> Place:
    place, ask = filling.chosen.pop(ask_id)
    for fact in ask.facts:
        del filling.holders[fact]
    _count(filling, ask, -1)
    return place


def _restore(filling: Filling, before: dict[str, tuple[Place, Ask]]) -> None:
    for ask_id in tuple(filling.chosen):
        _give_up(filling, ask_id)
    for place, ask in before.values():
        _take(filling, place, ask)


def _count(filling: Filling, ask: Ask, times: int) -> None:
    item = filling.build(ask)
    told = facts_told(item) if item is not None else ()
    for muscle in dict.fromkeys(ask.muscles):
        filling.covered[muscle] += times
    for fact in told:
        filling.told[fact] += times
