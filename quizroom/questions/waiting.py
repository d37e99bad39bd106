"""What must not be told after a round because a later one asks for it: it waits for that round.

A muscle may come back, since a record shows all of it; so its record is shown after the last round about it.
"""

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache

from quizroom.knowledge.record import Record
from quizroom.questions.model import Item, NearTerm, Reason

IT_WAITS = "A later round asks for this; it is told then."
"""Stands where a reason would tell the key of a later round."""
_SUPPLY = re.compile(r"(?P<whose>[^/]+/(nerve|artery))/[^/]+/(?P<value>.+)")
BONE_OF_LANDMARK = "landmark_to_bone"
"""The direction of asks on which bone a landmark lies."""


def told_before(item: Item, later: Sequence[Item]) -> Item:
    """The item as it may be explained while the later ones are still to come; itself if nothing waits.

    Records and reasons that hold the key of a later one are left out. What the item itself asked is told in
    any case: a twin that asks the same again is asked by a host who knows.
    """
    if not later:
        return item
    facts = frozenset(fact for one in later for fact in one.facts).difference(item.facts)
    told = _Telling(
        facts=facts,
        supplies=_supplies(facts),
        bones=tuple(one for one in later if _asks_bones(one)),
    )
    records = tuple(record for record in item.records if not any(holds_key(record, one) for one in later))
    near = tuple(told.near(one) for one in item.near)
    waits = near != item.near or any(told.waits(reason) for reason in reasons_of(item))
    if len(records) == len(item.records) and not waits:
        return item
    return replace(
        item,
        options=tuple(replace(one, reason=told.of(one.reason)) for one in item.options),
        stems=tuple(replace(one, reason=told.of(one.reason)) for one in item.stems),
        near=near,
        why=told.of(item.why),
        records=records,
    )


def gives_away(told: Item, later: Item) -> bool:
    """Whether the key of a later item can be read from one that has been asked and explained like this."""
    return (
        any(holds_key(record, later) for record in told.records)
        or not facts_told(told).isdisjoint(later.facts)
        or _tells_supply(facts_told(told), _supplies(later.facts))
        or any(asks_bone_of(later, text) for text in (*question_texts(told), *_texts(told)))
    )


def facts_told(item: Item) -> frozenset[str]:
    """The facts that the reasons of an item tell."""
    return frozenset(fact for reason in reasons_of(item) for fact in reason.facts)


def holds_key(record: Record, item: Item) -> bool:
    """Whether the key of an item can be read from a record.

    It is of one of the item's own muscles, or shows the way of a nerve or artery that is to be put in order,
    or the landmark whose bone is asked for.
    """
    if record.muscle in item.muscles:
        return True
    if item.format == "ordering":
        last = next(option.text for option in item.options if option.letter == item.key[-1])
        paths = [way.path for way in record.nerves] + [way.path for way in record.arteries]
        return any(last in path for path in paths)
    if _asks_bones(item):
        sites = (site for head in record.heads for site in (*head.origins, *head.insertions))
        return any(asks_bone_of(item, site.label) for site in sites)
    return False


@lru_cache(maxsize=65536)
def _supply(fact: str) -> tuple[str, str] | None:
    """Whose supply by nerve or artery a fact tells, and by which.

    Who hears of the infrahyoid branch of the superior thyroid artery knows the superior thyroid artery.
    """
    found = _SUPPLY.fullmatch(fact)
    return (found["whose"], found["value"]) if found else None


def _supplies(facts: Iterable[str]) -> dict[str, list[str]]:
    supplies: dict[str, list[str]] = {}
    for whose, value in filter(None, map(_supply, facts)):
        supplies.setdefault(whose, []).append(value)
    return supplies


def _tells_supply(told: Iterable[str], asked: Mapping[str, Sequence[str]]) -> bool:
    return bool(asked) and any(
        trunk in branch
        for whose, branch in filter(None, map(_supply, told))
        for trunk in asked.get(whose, ())
    )


def asks_bone_of(item: Item, text: str) -> bool:
    """Whether a text names a landmark whose bone an item asks for."""
    return _asks_bones(item) and any(name in text for name in _names_of_places(item))


def _names_of_places(item: Item) -> list[str]:
    """The landmarks whose bone an item asks for."""
    rows = [stem.text for stem in item.stems]
    return rows or [item.stem.removesuffix("?").partition(" is the ")[2]]


def can_stand_between(item: Item, before: Iterable[Item], after: Iterable[Item]) -> bool:
    """Whether no question before an item gives it away, and it none after it.

    A question and its key cannot wait as reasons do: one that names the coracoid process of the scapula comes
    after one that asks on which bone that is.
    """
    supplies = _supplies(item.facts)
    return not any(_spoils(one, item, supplies) for one in before) and not any(
        _spoils(item, one, _supplies(one.facts)) for one in after
    )


def latest_place(items: Sequence[Item], item: Item) -> int:
    """Where a new item goes: to the end, or before the first question that gives it away."""
    supplies, muscles = _supplies(item.facts), frozenset(item.muscles)
    if not supplies and not _asks_bones(item):
        return len(items)
    if _asks_bones(item):
        names = _names_of_places(item)
        spoiling = (
            place
            for place, one in enumerate(items)
            if any(name in text for text in question_texts(one) for name in names)
            or _tells_supply(one.facts, supplies)
        )
    else:
        spoiling = (
            place
            for place, one in enumerate(items)
            if not muscles.isdisjoint(one.muscles) and _tells_supply(one.facts, supplies)
        )
    return next(spoiling, len(items))


def question_texts(item: Item) -> Iterator[str]:
    """What is read before anything is explained, and the key."""
    yield item.stem
    yield from (stem.text for stem in item.stems)
    yield from (option.text for option in item.options)
    yield from (accepted.text for accepted in item.accepted)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Telling:
    """What later rounds ask for: facts, among them nerves and arteries of muscles, and bones of landmarks."""

    facts: frozenset[str]
    supplies: Mapping[str, Sequence[str]]
    bones: tuple[Item, ...]

    def waits(self, reason: Reason) -> bool:
        """Whether a reason tells any of it."""
        return (
            not self.facts.isdisjoint(reason.facts)
            or _tells_supply(reason.facts, self.supplies)
            or any(asks_bone_of(one, reason.text) for one in self.bones)
        )

    def near(self, term: NearTerm) -> NearTerm:
        """The term, or that what it is waits."""
        waits = self.waits(Reason(text=term.tells, facts=term.facts))
        return replace(term, tells=IT_WAITS) if waits else term

    def of(self, reason: Reason) -> Reason:
        """The reason, or that it waits."""
        return Reason(text=IT_WAITS) if self.waits(reason) else reason


def reasons_of(item: Item) -> Iterator[Reason]:
    """All that explains an item: its options, its rows, its key."""
    yield from (option.reason for option in item.options)
    yield from (stem.reason for stem in item.stems)
    yield item.why


def _texts(item: Item) -> Iterator[str]:
    return (reason.text for reason in reasons_of(item))


def _spoils(question: Item, item: Item, supplies: Mapping[str, Sequence[str]]) -> bool:
    """Whether a question with its key tells the key of another item, given the supplies that it asks for."""
    if _asks_bones(item) and any(asks_bone_of(item, text) for text in question_texts(question)):
        return True
    return _tells_supply(question.facts, supplies)


def _asks_bones(item: Item) -> bool:
    return item.direction.endswith(BONE_OF_LANDMARK)
