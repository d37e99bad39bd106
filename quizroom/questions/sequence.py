"""The order in which chosen items follow each other."""

from collections import Counter
from collections.abc import Sequence
from random import Random

from quizroom.questions.model import Item
from quizroom.questions.syllabus import Syllabus
from quizroom.questions.waiting import can_stand_between, facts_told


def in_order(syllabus: Syllabus, items: Sequence[Item], random: Random, *, interleave: bool) -> list[Item]:
    """The items one after the other.

    What another question would give away comes first. Then muscles that were not shown yet come before any
    that were, what tells the fact of another item comes after it, and what does not name its muscle before
    what does. Then, interleaved: a look-alike muscle follows its sibling, else one of another compartment.
    Not interleaved: region after region, compartment after compartment. (Mixing helps where things are
    alike: Brunmair & Richter 2019.)
    """
    drawn = list(items)
    random.shuffle(drawn)
    first = [item for item in drawn if not can_stand_between(item, _but(drawn, item), ())]
    rest = [item for item in drawn if all(item is not one for one in first)]
    return [*_unspoilt(_arranged(syllabus, first)), *_in_blocks(syllabus, rest, interleave=interleave)]


def _unspoilt(items: Sequence[Item]) -> list[Item]:
    """The items in this order, but none after one whose question gives it away."""
    left, placed = list(items), list[Item]()
    while left:
        fit = (one for one in left if can_stand_between(one, (), _but(left, one)))
        placed.append(next(fit, left[0]))
        left = _but(left, placed[-1])
    return placed


def _but(items: Sequence[Item], item: Item) -> list[Item]:
    return [one for one in items if one is not item]


def are_siblings(syllabus: Syllabus, one: Item, other: Item) -> bool:
    """Whether two items are about different muscles that students mix up."""
    alike = {sibling for muscle in one.muscles for sibling in syllabus.kinship.lookalikes.get(muscle, ())}
    return not alike.isdisjoint(other.muscles) and set(one.muscles).isdisjoint(other.muscles)


def compartment_of(syllabus: Syllabus, item: Item) -> str:
    """The compartment of an item's first muscle."""
    return syllabus.catalogue.muscles[item.muscles[0]].compartment


def _in_blocks(syllabus: Syllabus, drawn: Sequence[Item], *, interleave: bool) -> list[Item]:
    if interleave:
        return _arranged(syllabus, drawn)
    blocks: dict[tuple[int, int], list[Item]] = {}
    for item in drawn:
        blocks.setdefault(_block(syllabus, item), []).append(item)
    return [item for block in sorted(blocks) for item in _arranged(syllabus, blocks[block])]


def _arranged(syllabus: Syllabus, drawn: Sequence[Item]) -> list[Item]:
    left = list(drawn)
    placed: list[Item] = []
    while left:
        shown = {muscle for item in placed for muscle in item.muscles}
        waiting = Counter(compartment_of(syllabus, item) for item in left)
        previous = placed[-1] if placed else None
        following = min(
            left,
            key=lambda item: (
                not shown.isdisjoint(item.muscles),
                _tells(item, left),
                _hints_at(item, left),
                _distance(syllabus, previous, item),
                -waiting[compartment_of(syllabus, item)],
            ),
        )
        left.remove(following)
        placed.append(following)
    return placed


def _tells(item: Item, left: Sequence[Item]) -> int:
    """How many of the items that are left would be given away by this one's reasons."""
    told = facts_told(item)
    return sum(other is not item and not told.isdisjoint(other.facts) for other in left)


def _hints_at(item: Item, left: Sequence[Item]) -> int:
    """How many of the items that are left come back to a muscle of this one without naming it."""
    return sum(
        other is not item and any(one in item.muscles for one in other.muscles if one != _named(other))
        for other in left
    )


def _named(item: Item) -> str:
    return item.subject.partition("/")[0]


def _distance(syllabus: Syllabus, previous: Item | None, item: Item) -> int:
    """How little an item is wanted after the previous one."""
    if previous is None or are_siblings(syllabus, previous, item):
        return 0
    if not set(previous.muscles).isdisjoint(item.muscles):
        return 3
    return 2 if compartment_of(syllabus, previous) == compartment_of(syllabus, item) else 1


def _block(syllabus: Syllabus, item: Item) -> tuple[int, int]:
    muscle = syllabus.catalogue.muscles[item.muscles[0]]
    compartments = list(syllabus.catalogue.compartments)
    return syllabus.catalogue.regions[muscle.region].order, compartments.index(muscle.compartment)
