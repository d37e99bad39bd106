"""Dealing a review by its blueprint: every cell gets exactly its rounds."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field, replace
from math import ceil
from random import Random

from quizroom.questions.ask import Ask
from quizroom.questions.blueprint import Blueprint, problem_of
from quizroom.questions.cells import (
    NOTHING_RECORDED,
    asks_by_region,
    built,
    families_of,
    most_of,
    region_of,
    regions_of,
    warm_up_asks,
)
from quizroom.questions.difficulty import expected_difficulty, predicted_difficulty
from quizroom.questions.experience import NO_EXPERIENCE, ClassExperience
from quizroom.questions.filling import Filling, Place, best_free, chosen_in, fill, hold
from quizroom.questions.formats import TYPED_ONE_IN
from quizroom.questions.model import TYPED_FORMATS, Format, Item
from quizroom.questions.review_rules import kept_waiting
from quizroom.questions.sequence import in_order
from quizroom.questions.syllabus import Syllabus
from quizroom.questions.undealable import CannotDeal
from quizroom.questions.waiting import can_stand_between

_WARM_UP = "Warm-up"
_DRAWS = 3


@dataclass(frozen=True, slots=True, kw_only=True)
class Grid:
    """A blueprint on a course list, and the draw."""

    syllabus: Syllabus
    blueprint: Blueprint
    formats: tuple[Format, ...]
    seed: int
    random: Random
    experience: ClassExperience
    items: dict[str, Item | None] = field(default_factory=dict)

    def item(self, ask: Ask) -> Item | None:
        """The item of an ask, made once."""
        if ask.id not in self.items:
            self.items[ask.id] = self.made_in(ask, self.formats)
        return self.items[ask.id]

    def made_in(self, ask: Ask, formats: Sequence[Format]) -> Item | None:
        """The item of an ask in the first of the formats in which it can be asked."""
        return built(self.syllabus, self.experience.with_errors(ask), formats, self.seed)


def deal_grid(
    syllabus: Syllabus,
    blueprint: Blueprint,
    formats: tuple[Format, ...],
    seed: int,
    experience: ClassExperience = NO_EXPERIENCE,
) -> tuple[Item, ...]:
    """The items of the blueprint, in order: warm-up first, then so many of each cell as it says.

    Of a few draws the one in which least has to wait for a later round, the first in which nothing has.

    Raises:
        CannotDeal: naming the cell that cannot be filled, and what it yields.
    """
    problem = problem_of(blueprint, {one.id for one in regions_of(syllabus)}, families_of(syllabus))
    if problem:
        raise CannotDeal(problem)
    best: tuple[Item, ...] = ()
    for draw in range(_DRAWS):
        items = _drawn(_grid(syllabus, blueprint, formats, seed, experience, draw))
        if not best or len(kept_waiting(items)) < len(kept_waiting(best)):
            best = items
        if not kept_waiting(best):
            break
    return best


def _drawn(grid: Grid) -> tuple[Item, ...]:
    warm_up, *cells = places = _places(grid)
    filling = _filled(grid, places)
    first = [replace(_made(grid, ask), warm_up=True) for ask in chosen_in(filling, warm_up)]
    rest = _in_formats(grid, [ask for place in cells for ask in chosen_in(filling, place)])
    ordered = in_order(grid.syllabus, rest, grid.random, interleave=grid.blueprint.interleave)
    return (*first, *ordered)


def swap_in_grid(  # noqa: PLR0917 -- what is dealt, by which plan, and which place of it is to change
    syllabus: Syllabus,
    blueprint: Blueprint,
    formats: tuple[Format, ...],
    items: Sequence[Item],
    position: int,
    seed: int,
    experience: ClassExperience = NO_EXPERIENCE,
) -> Item:
    """Another item of the same cell for one place of a review that was dealt by a blueprint.

    Raises:
        CannotDeal: if the cell yields nothing else.
    """
    grid = _grid(syllabus, blueprint, formats, seed, experience)
    leaving = items[position]
    place = _place_of(grid, leaving)

    def build(ask: Ask) -> Item | None:
        item = grid.item(ask)
        fits = item is not None and can_stand_between(item, items[:position], items[position + 1 :])
        return item if fits else None

    filling = Filling(build=build, prefer=_preference(grid))
    for item in items:
        hold(filling, item)
    filling.covered.subtract(leaving.muscles)
    ask = best_free(filling, place)
    if ask is None:
        raise CannotDeal(f"{place.name}: all that this course list yields there is already in the review.")
    kept = TYPED_FORMATS if leaving.format in TYPED_FORMATS else ()
    other = grid.made_in(ask, (*kept, *formats)) or _made(grid, ask)
    return replace(other, warm_up=leaving.warm_up)


def cell_name(syllabus: Syllabus, region: str, family: str) -> str:
    """A cell as people call it."""
    name = syllabus.catalogue.regions[region].name
    return f"{name[:1].upper()}{name[1:]}, {family.replace('_', ' ')}"


def _grid(  # noqa: PLR0917 -- what is dealt, by which plan, and which draw
    syllabus: Syllabus,
    blueprint: Blueprint,
    formats: tuple[Format, ...],
    seed: int,
    experience: ClassExperience,
    draw: int = 0,
) -> Grid:
    again = f"/{draw}" if draw else ""
    return Grid(
        syllabus=syllabus,
        blueprint=blueprint,
        formats=formats,
        seed=seed,
        random=Random(f"grid/{seed}{again}"),  # noqa: S311 -- a deal is to be repeatable, not secret
        experience=experience,
    )


def _places(grid: Grid) -> tuple[Place, ...]:
    """The rounds to warm up, then the cells that have rounds."""
    cells = [cell for cell in grid.blueprint.cells if cell.rounds]
    families = dict.fromkeys(cell.family for cell in cells)
    asks = {family: asks_by_region(grid.syllabus, family, grid.formats) for family in families}
    return (
        Place(name=_WARM_UP, rounds=grid.blueprint.warm_up, asks=_warming_up(grid)),
        *(
            Place(
                name=cell_name(grid.syllabus, cell.region, cell.family),
                rounds=cell.rounds,
                asks=_shuffled(grid, asks[cell.family].get(cell.region, [])),
            )
            for cell in cells
        ),
    )


def _warming_up(grid: Grid) -> tuple[Ask, ...]:
    """What may be asked to warm up, that of the grid's own regions first."""
    if not grid.blueprint.warm_up:
        return ()
    regions = {cell.region for cell in grid.blueprint.cells if cell.rounds}
    drawn = _shuffled(grid, warm_up_asks(grid.syllabus, grid.formats))
    return tuple(sorted(drawn, key=lambda ask: region_of(grid.syllabus, ask) not in regions))


def _place_of(grid: Grid, item: Item) -> Place:
    if item.warm_up:
        return Place(name=_WARM_UP, rounds=1, asks=_warming_up(grid))
    region, family = region_of(grid.syllabus, item), item.family
    asks = asks_by_region(grid.syllabus, family, grid.formats).get(region, [])
    return Place(name=cell_name(grid.syllabus, region, family), rounds=1, asks=_shuffled(grid, asks))


def _shuffled(grid: Grid, asks: Sequence[Ask]) -> tuple[Ask, ...]:
    drawn = list(asks)
    grid.random.shuffle(drawn)
    return tuple(drawn)


def _filled(grid: Grid, places: tuple[Place, ...]) -> Filling:
    """The places filled; a second time with an eye to facts that several questions rest on."""
    failed, filling = places[0], Filling(build=grid.item, prefer=None)
    typed = frozenset(TYPED_FORMATS) & frozenset(grid.formats)
    for thrifty in (False, True):
        filling = Filling(build=grid.item, prefer=_preference(grid), typed=typed, thrifty=thrifty)
        empty = fill(filling, places)
        if empty is None:
            return filling
        failed = empty
    raise CannotDeal(_too_few(grid, failed, len(chosen_in(filling, failed))))


def _preference(grid: Grid) -> Callable[[Item], float] | None:
    sign = {"easy": 1, "hard": -1}.get(grid.blueprint.aim, 0)
    return (lambda item: sign * _expected(grid, item)) if sign else None


def _expected(grid: Grid, item: Item) -> float:
    return expected_difficulty(predicted_difficulty(grid.syllabus, item), grid.experience.observed_of(item))


def _in_formats(grid: Grid, asks: Sequence[Ask]) -> list[Item]:
    """The items of the asks, a third of them typed if typed answers are wanted and enough can be asked so."""
    drawn = _shuffled(grid, asks)
    items = {ask.id: _made(grid, ask) for ask in drawn}
    wanted = ceil(len(drawn) / TYPED_ONE_IN) - sum(item.format in TYPED_FORMATS for item in items.values())
    formats = [format_ for format_ in TYPED_FORMATS if format_ in grid.formats]
    for ask in drawn if formats else ():
        typed = grid.made_in(ask, formats) if wanted > 0 else None
        if typed is not None and items[ask.id].format not in TYPED_FORMATS:
            items[ask.id] = typed
            wanted -= 1
    return list(items.values())


def _made(grid: Grid, ask: Ask) -> Item:
    item = grid.item(ask)
    if item is None:
        raise TypeError("only what can be made is chosen")
    return item


def _too_few(grid: Grid, place: Place, filled: int) -> str:
    # What was found by giving way counts too: counting in drawn order alone may stop short of it.
    most = max(filled, most_of(grid.syllabus, place.asks, grid.formats))
    wanted = f"{place.name}: {_rounds(place.rounds)} wanted, but {grid.syllabus.course.title}"
    if not place.asks:
        return f"{wanted} yields none: {NOTHING_RECORDED}."
    if most < place.rounds:
        return f"{wanted} yields {most} there without repeating a fact."
    return (
        f"{wanted} yields {filled} there beside the other cells, which rest on the same facts ({most} alone)."
    )


def _rounds(count: int) -> str:
    return "1 round is" if count == 1 else f"{count} rounds are"
