"""The cells of a blueprint on a course list: what could be asked in each, and how many items that makes."""

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass

from quizroom.knowledge.model import Region
from quizroom.questions.ask import Ask
from quizroom.questions.blueprint import MOST_ROUNDS
from quizroom.questions.build import build_item
from quizroom.questions.families import asks_of
from quizroom.questions.meanings import MEANING
from quizroom.questions.model import FAMILIES, Family, Format, Item
from quizroom.questions.syllabus import Syllabus
from quizroom.questions.waiting import BONE_OF_LANDMARK

_WARM_UP_DIRECTIONS = (BONE_OF_LANDMARK, MEANING)
COUNTED_TO = 24
"""A grid does not count further in a cell; what more it yields is found out when it is dealt."""
_COUNTING_SEED = 1
"""Whether an ask has fair options hardly depends on chance: one seed in a thousand asks differs."""

NOTHING_RECORDED = "nothing of this kind is certain enough to be asked there"
NO_FAIR_OPTIONS = "what could be asked there has no fair wrong options"


@dataclass(frozen=True, slots=True, kw_only=True)
class CellYield:
    """How many items a cell can give without asking a fact twice; `reason` says why there are none.

    `COUNTED_TO` means so many or more.
    """

    region: str
    family: Family
    most: int
    reason: str


def regions_of(syllabus: Syllabus) -> tuple[Region, ...]:
    """The regions in which the course list has a muscle, in the order of the content."""
    ids = {syllabus.catalogue.muscles[muscle].region for muscle in syllabus.muscles}
    regions = syllabus.catalogue.regions
    return tuple(sorted((regions[one] for one in ids if one in regions), key=lambda region: region.order))


def families_of(syllabus: Syllabus) -> tuple[Family, ...]:
    """The families that the course examines, in the usual order."""
    return tuple(family for family in FAMILIES if family in syllabus.course.families)


def region_of(syllabus: Syllabus, one: Ask | Item) -> str:
    """The region under which something is counted: that of its first muscle."""
    return syllabus.catalogue.muscles[one.muscles[0]].region


def asks_by_region(syllabus: Syllabus, family: Family, formats: Iterable[Format]) -> dict[str, list[Ask]]:
    """What can be asked in a family, by region, in the order of the content."""
    wanted = frozenset(formats)
    found: dict[str, list[Ask]] = {}
    for ask in asks_of(syllabus, family):
        if not wanted.isdisjoint(ask.formats):
            found.setdefault(region_of(syllabus, ask), []).append(ask)
    return found


def warm_up_asks(syllabus: Syllabus, formats: Iterable[Format]) -> list[Ask]:
    """Landmarks and movement words: what is taught before muscles."""
    if "look_alike" not in syllabus.course.families:
        return []
    by_region = asks_by_region(syllabus, "look_alike", formats)
    return [ask for asks in by_region.values() for ask in asks if is_warm_up(ask)]


def is_warm_up(one: Ask | Item) -> bool:
    """Whether something asks about a landmark or a movement word alone."""
    return one.direction in _WARM_UP_DIRECTIONS


def cell_yields(
    syllabus: Syllabus, formats: tuple[Format, ...], breathe: Callable[[], None] = lambda: None
) -> Iterator[CellYield]:
    """What each cell of the grid can give, row by row; `breathe` is called between items."""
    asks: dict[Family, dict[str, list[Ask]]] = {}
    for family in families_of(syllabus):
        breathe()
        asks[family] = asks_by_region(syllabus, family, formats)
    for region in regions_of(syllabus):
        for family, by_region in asks.items():
            here = by_region.get(region.id, [])
            most = most_of(syllabus, here, formats, breathe, limit=COUNTED_TO)
            reason = "" if most else NO_FAIR_OPTIONS if here else NOTHING_RECORDED
            yield CellYield(region=region.id, family=family, most=most, reason=reason)


def most_of(
    syllabus: Syllabus,
    asks: Iterable[Ask],
    formats: tuple[Format, ...],
    breathe: Callable[[], None] = lambda: None,
    *,
    limit: int = MOST_ROUNDS,
) -> int:
    """How many of these asks make items of which no two rest on the same fact, up to a limit."""
    taken: set[str] = set()
    count = 0
    for ask in sorted(asks, key=lambda one: len(one.facts)):
        breathe()
        if count == limit:
            break
        if taken.isdisjoint(ask.facts) and built(syllabus, ask, formats, _COUNTING_SEED) is not None:
            taken.update(ask.facts)
            count += 1
    return count


def built(syllabus: Syllabus, ask: Ask, formats: Iterable[Format], seed: int) -> Item | None:
    """The item of an ask in the first of the formats in which it can be asked; None if there is none."""
    for format_ in formats:
        item = build_item(syllabus, ask, format_, seed) if format_ in ask.formats else None
        if item is not None:
            return item
    return None
