"""Asking again what an item asked, but not with the same item.

The other direction comes first, for what was learned one way is hardly known the other way round (Pan &
Rickard 2018); then other words, another format, other wrong options.
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import lru_cache
from random import Random

from quizroom.questions.ask import Ask
from quizroom.questions.build import build_item
from quizroom.questions.deck import ALL_FORMATS
from quizroom.questions.families import asks_of
from quizroom.questions.model import FAMILIES, Family, Format, Item
from quizroom.questions.syllabus import Syllabus

SINGLE: tuple[Family, ...] = (
    "origin",
    "insertion",
    "action",
    "prime_mover",
    "joint",
    "nerve",
    "root",
    "artery",
    "compartment",
    "look_alike",
    "antagonist",
    "name",
)
"""Families that ask for one fact by itself: any of them may ask a fact of another family again."""
_PART = 6
"""Rank of what asks for a part of the fact alone: a nerve, where movement and nerve were asked together."""
_SEEDS_TRIED = 4
"""Seeds by which the very same question may come out with other wrong options."""


@dataclass(frozen=True, slots=True)
class _Choice:
    """A way to ask again: the lower the rank, the better; ties by lot."""

    rank: int
    lot: float
    ask: Ask
    format: Format


def ask_again(
    syllabus: Syllabus,
    item: Item,
    seed: int,
    *,
    about: tuple[str, ...] = (),
    direction: str = "",
    formats: tuple[Format, ...] = ALL_FORMATS,
) -> Item:
    """An item about the same fact; the same question only if nothing else can be asked of this syllabus.

    Even then its options change places, if they may. A host's own item is asked as it was, for
    nothing is known of the fact behind it.

    Args:
        syllabus: from which it is dealt.
        item: what was asked before.
        seed: the same seed gives the same item.
        about: those of the item's facts that are wanted; empty for all.
        direction: which is wanted first; empty for any other than the item's.
        formats: those that may be dealt; the item's own is never barred.
    """
    if item.by_host:
        return item
    wanted = frozenset(about or item.facts)
    random = Random(f"again/{seed}/{item.id}")  # noqa: S311 -- a deal is to be repeatable, not secret
    allowed = (*formats, item.format)
    choices = [
        _Choice(_rank(item, ask, format_, wanted, direction), random.random(), ask, format_)
        for ask in _asks_about(syllabus, item, wanted)
        for format_ in ask.formats
        if format_ in allowed
    ]
    for choice in sorted(choices, key=lambda one: (one.rank, one.lot)):
        other = _built_otherwise(syllabus, choice, item, seed)
        if other is not None:
            return other
    return _relettered(syllabus, choices, item, seed)


def plain_direction(direction: str) -> str:
    """The direction without the family from which a look-alike has it; a movement counts as an action.

    So that the same fact asked the same way by two families counts as one.
    """
    return direction.rpartition(":")[2].replace("_to_movement", "_to_action")


def plain_family(item: Item | Ask) -> str:
    """The family whose fact it is: that of a look-alike stands in its direction."""
    family, colon, _ = item.direction.partition(":")
    return family if colon else item.family


def _asks_about(syllabus: Syllabus, item: Item, wanted: frozenset[str]) -> Iterator[Ask]:
    """What rests on these facts, or on some of them, and the item's own question."""
    examined = [family for family in FAMILIES if family in syllabus.course.families]
    for family in examined:
        if family in SINGLE or family == item.family:
            index = _by_fact(syllabus, family)
            for ask in _of_facts(index, wanted):
                if frozenset(ask.facts) <= wanted or _is_same(ask, item):
                    yield ask


def _of_facts(index: Mapping[str, tuple[Ask, ...]], wanted: Iterable[str]) -> Iterator[Ask]:
    found = {ask.id: ask for fact in sorted(wanted) or [""] for ask in index.get(fact, ())}
    yield from found.values()


@lru_cache(maxsize=8 * len(FAMILIES))
def _by_fact(syllabus: Syllabus, family: Family) -> Mapping[str, tuple[Ask, ...]]:
    """The asks of a family by each fact they rest on; those that rest on none under ""."""
    found: dict[str, list[Ask]] = {}
    for ask in asks_of(syllabus, family):
        for fact in ask.facts or ("",):
            found.setdefault(fact, []).append(ask)
    return {fact: tuple(asks) for fact, asks in found.items()}


def _is_same(ask: Ask, item: Item) -> bool:
    """Whether an ask is the very question of the item: its facts, subject and direction."""
    return (ask.family, ask.direction, ask.subject) == (item.family, item.direction, item.subject) and (
        frozenset(ask.facts) == frozenset(item.facts)
    )


def _rank(item: Item, ask: Ask, format_: Format, wanted: frozenset[str], direction: str) -> int:
    if frozenset(ask.facts) != wanted:
        return _PART
    way, was = plain_direction(ask.direction), plain_direction(item.direction)
    if direction and way == direction and not (_is_same(ask, item) and format_ == item.format):
        return 0
    if way != was:
        return 1 if plain_family(ask) == plain_family(item) else 2
    if not _is_same(ask, item):
        return 3
    return 4 if format_ != item.format else 5


def _built_otherwise(syllabus: Syllabus, choice: _Choice, item: Item, seed: int) -> Item | None:
    for turn in range(_SEEDS_TRIED):
        other = build_item(syllabus, choice.ask, choice.format, seed + turn)
        if other is None or is_another(other, item):
            return other
    return None


def _relettered(syllabus: Syllabus, choices: Iterable[_Choice], item: Item, seed: int) -> Item:
    """The item with its options in another order, as far as the seeds give one."""
    for choice in choices:
        if _is_same(choice.ask, item) and choice.format == item.format:
            others = (
                build_item(syllabus, choice.ask, item.format, seed + turn) for turn in range(_SEEDS_TRIED)
            )
            return next((one for one in others if one is not None and one.options != item.options), item)
    return item


def is_another(one: Item, other: Item) -> bool:
    """Whether two items differ for whoever reads them, and not by the order of their options alone."""
    return _as_read(one) != _as_read(other)


def _as_read(item: Item) -> tuple[str, Format, frozenset[str], frozenset[str]]:
    options = frozenset(option.text for option in item.options)
    return item.stem, item.format, options, frozenset(stem.text for stem in item.stems)
