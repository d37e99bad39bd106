"""The real content, loaded once, and plans for one of its course lists."""

from functools import cache

from quizroom.knowledge.catalogue import Catalogue
from quizroom.knowledge.load import content_folder, load_content
from quizroom.questions.model import FAMILIES
from quizroom.room.state import Plan

COURSE = "intro_upper_limb"


@cache
def knowledge() -> Catalogue:
    """The knowledge base that is shipped."""
    catalogue = load_content(content_folder()).catalogue
    assert catalogue is not None
    return catalogue


def plan_of(rounds: int = 4, *, seed: int = 1) -> Plan:
    """A plan of so many rounds over all families of the course list."""
    course = knowledge().courses[COURSE]
    return Plan(
        title="Upper limb",
        course=course.id,
        course_title=course.title,
        families=tuple(family for family in FAMILIES if family in course.families),
        rounds=rounds,
        seed=seed,
    )
