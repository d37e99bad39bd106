"""Dealing a review: items spread over muscles and families, none of which gives another away."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from random import Random

from quizroom.knowledge.catalogue import Catalogue
from quizroom.knowledge.model import Course
from quizroom.questions.blueprint import Blueprint
from quizroom.questions.build import build_item
from quizroom.questions.dealing import Dealing, next_item, start_dealing, take_note, within_regions
from quizroom.questions.difficulty import predicted_difficulty
from quizroom.questions.experience import NO_EXPERIENCE, ClassExperience
from quizroom.questions.families import asks_of
from quizroom.questions.grid import deal_grid, swap_in_grid
from quizroom.questions.model import TYPED_FORMATS, Family, Format, Item
from quizroom.questions.syllabus import Syllabus, syllabus_of
from quizroom.questions.undealable import CannotDeal as CannotDeal
from quizroom.questions.waiting import latest_place

LETTERED: tuple[Format, ...] = ("one_best", "pick_n", "ordering", "matching")
ALL_FORMATS: tuple[Format, ...] = (*LETTERED, *TYPED_FORMATS)


@dataclass(frozen=True, slots=True, kw_only=True)
class DealPlan:
    """What a review is to be made of. Typed answers come only if `formats` names them."""

    families: tuple[Family, ...]
    rounds: int
    seed: int
    formats: tuple[Format, ...] = LETTERED
    blueprint: Blueprint | None = None
    """So many rounds for each cell of a grid; families and rounds then follow from it."""
    regions: tuple[str, ...] = ()
    """Where not the whole list is wanted: ids of the regions of which muscles may be asked."""
    experience: ClassExperience = NO_EXPERIENCE
    """What classes did before: their errors become wrong options, their answers measure difficulty."""


def deal(catalogue: Catalogue, course: Course, plan: DealPlan) -> tuple[Item, ...]:
    """The items of a review, in order; the same for the same plan.

    Families take turns; no muscle comes twice before all have come; no fact is asked twice; no question holds
    the key of a later one; and where it can be avoided no record or reason has to wait for a later round.

    Raises:
        CannotDeal: if the course and the families do not yield so many questions.
    """
    return deal_from(syllabus_of(catalogue, course), plan)


def prepare(syllabus: Syllabus, families: Sequence[Family]) -> int:
    """Work out once what every deal of these families looks up; returns how many questions they hold."""
    for muscle in syllabus.muscles:
        syllabus.record(muscle)
    vocabulary = syllabus.vocabulary()
    for form in vocabulary.forms:
        vocabulary.near(form)
    return sum(len(asks_of(syllabus, family)) for family in families)


def deal_from(syllabus: Syllabus, plan: DealPlan) -> tuple[Item, ...]:
    """The same for a syllabus made before."""
    if plan.blueprint is not None:
        items = deal_grid(syllabus, plan.blueprint, plan.formats, plan.seed, plan.experience)
    else:
        items = tuple(_dealt(syllabus, plan))
    return tuple(_rated(syllabus, item, plan.experience) for item in items)


def _dealt(syllabus: Syllabus, plan: DealPlan) -> list[Item]:
    dealing = _start(syllabus, plan, plan.seed)
    items: list[Item] = []
    while len(items) < plan.rounds:
        item = next_item(dealing)
        if item is None:
            raise CannotDeal(_too_few(syllabus.course, plan, len(items)))
        items.insert(latest_place(items, item), item)
    return items


def swap(  # noqa: PLR0917 -- what is dealt, by which plan, and which place of it is to change
    catalogue: Catalogue, course: Course, plan: DealPlan, items: Sequence[Item], position: int, seed: int
) -> Item:
    """Another item for one place of a dealt review (0 is the first), of the same family if possible.

    By a blueprint it is always of the same cell; a host's own item has none.

    Raises:
        CannotDeal: if nothing else can be asked.
    """
    syllabus = syllabus_of(catalogue, course)
    if plan.blueprint is not None and not items[position].by_host:
        other = swap_in_grid(syllabus, plan.blueprint, plan.formats, items, position, seed, plan.experience)
    else:
        other = _swapped(syllabus, plan, items, position, seed)
    return _rated(syllabus, other, plan.experience)


def _swapped(syllabus: Syllabus, plan: DealPlan, items: Sequence[Item], position: int, seed: int) -> Item:
    dealing = _start(syllabus, plan, seed)
    for place, item in enumerate(items):
        take_note(dealing, item, shown=place != position)
    dealing.before, dealing.after = tuple(items[:position]), tuple(items[position + 1 :])
    other = next_item(dealing, items[position].family)
    if other is None:
        raise CannotDeal("All that this course list and these families yield is already in the review.")
    return other


def all_items(
    catalogue: Catalogue,
    course: Course,
    family: Family,
    seed: int,
    experience: ClassExperience = NO_EXPERIENCE,
) -> Iterator[Item]:
    """Every item that a family can make of a course list, in every format, in the order of the list."""
    syllabus = syllabus_of(catalogue, course)
    yield from (_rated(syllabus, item, experience) for item in items_of(syllabus, family, seed, experience))


def items_of(
    syllabus: Syllabus, family: Family, seed: int, experience: ClassExperience = NO_EXPERIENCE
) -> Iterator[Item]:
    """The same for a syllabus made before, without the predicted difficulty."""
    for ask in asks_of(syllabus, family):
        for format_ in ask.formats:
            item = build_item(syllabus, experience.with_errors(ask), format_, seed)
            if item is not None:
                yield item


def _rated(syllabus: Syllabus, item: Item, experience: ClassExperience = NO_EXPERIENCE) -> Item:
    return replace(
        item, difficulty=predicted_difficulty(syllabus, item), observed=experience.observed_of(item)
    )


def _start(syllabus: Syllabus, plan: DealPlan, seed: int) -> Dealing:
    course = syllabus.course
    families = tuple(family for family in plan.families if family in course.families)
    if not families:
        wanted = ", ".join(plan.families) or "nothing"
        raise CannotDeal(f"{course.title} does not examine what was chosen ({wanted}).")
    if plan.rounds < 1:
        raise CannotDeal("A review has at least one round.")
    random = Random(f"deal/{seed}")  # noqa: S311 -- a deal is to be repeatable, not secret
    dealing = start_dealing(syllabus, families, plan.formats, random, seed, plan.experience)
    return within_regions(dealing, plan.regions)


def _too_few(course: Course, plan: DealPlan, dealt: int) -> str:
    return (
        f"{course.title} yields {dealt} question{'' if dealt == 1 else 's'} of these families without "
        f"repeating a fact; {plan.rounds} were asked for. Choose fewer rounds or more families."
    )
