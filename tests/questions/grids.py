"""Grids for the tests of dealing by a blueprint: what was dealt, and what could have been."""

from collections import Counter
from collections.abc import Sequence
from functools import cache

from hypothesis import strategies as st

from quizroom.questions.blueprint import Aim, Blueprint, Cell
from quizroom.questions.cells import CellYield, cell_yields, families_of, region_of, regions_of
from quizroom.questions.deck import LETTERED, DealPlan, deal_from
from quizroom.questions.model import Family, Format, Item
from tests.questions.lists import COURSES, syllabus

Place = tuple[str, Family]


@cache
def yields(course: str) -> tuple[CellYield, ...]:
    """What each cell of a shipped course list gives, without typed answers."""
    return tuple(cell_yields(syllabus(course), LETTERED))


def grid(
    rounds: dict[Place, int], *, warm_up: int = 0, interleave: bool = True, aim: Aim = "mixed"
) -> Blueprint:
    """A blueprint with so many rounds for each place."""
    cells = tuple(
        Cell(region=region, family=family, rounds=count) for (region, family), count in rounds.items()
    )
    return Blueprint(cells=cells, warm_up=warm_up, interleave=interleave, aim=aim)


def dealt_by(
    course: str, blueprint: Blueprint, *, seed: int = 1, formats: tuple[Format, ...] = LETTERED
) -> tuple[Item, ...]:
    """The review that a blueprint yields."""
    plan = DealPlan(families=(), rounds=0, seed=seed, formats=formats, blueprint=blueprint)
    return deal_from(syllabus(course), plan)


def counted(course: str, items: Sequence[Item]) -> Counter[Place]:
    """How many items of each place there are, those to warm up left out."""
    return Counter((region_of(syllabus(course), item), item.family) for item in items if not item.warm_up)


@st.composite
def course_grids(draw: st.DrawFn) -> tuple[str, Blueprint]:
    """Any grid of a course list that a review could hold, whether it can be filled or not."""
    course = draw(st.sampled_from(COURSES))
    regions = [region.id for region in regions_of(syllabus(course))]
    places = st.tuples(st.sampled_from(regions), st.sampled_from(families_of(syllabus(course))))
    rounds = draw(st.dictionaries(places, st.integers(1, 12), min_size=1, max_size=5))
    return course, grid(
        rounds,
        warm_up=draw(st.integers(0, 3)),
        interleave=draw(st.booleans()),
        aim=draw(st.sampled_from(["easy", "mixed", "hard"])),
    )
