"""What a course examines, in which words, and how it rules on contested facts."""

from typing import Literal, get_args

from quizroom.knowledge.catalogue import Catalogue
from quizroom.knowledge.facts import Fact
from quizroom.knowledge.model import Course, Muscle, Status
from quizroom.knowledge.wording import muscle_name

Ruling = Literal["key", "accept", "bar"]

CourseFamily = Literal[
    "origin",
    "insertion",
    "action",
    "prime_mover",
    "joint",
    "nerve",
    "root",
    "artery",
    "compartment",
    "set",
    "look_alike",
    "odd_one_out",
    "antagonist",
    "name",
    "lesion",
    "two_step",
    "ordering",
    "matching",
]
"""An item family that a course may name."""
FAMILIES: tuple[CourseFamily, ...] = get_args(CourseFamily)

_BY_STATUS: dict[Status, Ruling] = {"core": "key", "variant": "accept", "minority": "bar"}


def course_muscles(catalogue: Catalogue, course: Course) -> tuple[Muscle, ...]:
    """The muscles of the course, in the order of its list."""
    return tuple(catalogue.muscles[one] for one in course.muscles if one in catalogue.muscles)


def ruling(course: Course, fact: Fact) -> Ruling:
    """How the course takes a fact: `key` counts, `accept` also counts, `bar` is neither asked nor wrong.

    Without a house rule: core facts are keyed, variants accepted, minority readings barred. Nothing
    that is recorded at all may serve as a wrong option.
    """
    house = (rule.ruling for rule in course.house_rules if rule.fact == fact.id)
    return next(house, _BY_STATUS[fact.status])


def keyed(course: Course, fact: Fact) -> bool:
    """Whether the fact may be asked for as the right answer."""
    return ruling(course, fact) == "key"


def accepted(course: Course, fact: Fact) -> bool:
    """Whether an answer that states the fact is right."""
    return ruling(course, fact) in ("key", "accept")


def term_for(catalogue: Catalogue, course: Course, concept: str) -> str:
    """The words in which the course shows a concept: its own preference, else the catalogue's."""
    own = (term for preferred, term in course.preferred if preferred == concept)
    return next(own, None) or standard_term(catalogue, concept)


def standard_term(catalogue: Catalogue, concept: str) -> str:
    """The catalogue's words for a concept; of a landmark its label. Raises KeyError for no concept."""
    if concept in catalogue.landmarks:
        return catalogue.landmarks[concept].label
    muscle, _, part = concept.partition("/")
    if muscle in catalogue.muscles:
        return muscle_name(catalogue, muscle, part)
    tables = (catalogue.bones, catalogue.joints, catalogue.movements, catalogue.nerves, catalogue.arteries)
    for table in tables:
        if concept in table:
            return table[concept].name
    raise KeyError(concept)
