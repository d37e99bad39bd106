"""The shipped course lists over the shipped content, prepared once for all tests."""

from functools import cache

from quizroom.knowledge.catalogue import Catalogue
from quizroom.knowledge.load import content_folder
from quizroom.questions.deck import items_of
from quizroom.questions.model import FAMILIES, Family, Item
from quizroom.questions.syllabus import Syllabus, syllabus_of
from tests.shipped import content

COURSES = tuple(sorted(path.stem for path in (content_folder() / "courses").glob("*.toml")))
REGIONAL = "upper_limb_regional"
PLACED = ("ordering", "matching")
SEED = 3


def catalogue() -> Catalogue:
    """The content as it is shipped."""
    return content()


def examined(course: str) -> tuple[Family, ...]:
    """The families that a course examines."""
    named = catalogue().courses[course].families
    return tuple(family for family in FAMILIES if family in named)


@cache
def syllabus(course: str) -> Syllabus:
    """A course list laid over it."""
    return syllabus_of(catalogue(), catalogue().courses[course])


@cache
def items_of_course(course: str) -> tuple[Item, ...]:
    """Every item of a course list, for one seed."""
    return tuple(item for family in examined(course) for item in items_of(syllabus(course), family, SEED))


@cache
def all_items() -> tuple[Item, ...]:
    """Every item of every course list that is a single question, for one seed."""
    return tuple(item for item in _every_item() if item.format not in PLACED)


@cache
def placed_items() -> tuple[Item, ...]:
    """Every ordering and every matching likewise."""
    return tuple(item for item in _every_item() if item.format in PLACED)


@cache
def _every_item() -> tuple[Item, ...]:
    return tuple(item for course in COURSES for item in items_of_course(course))
