"""What each course list can be dealt by: counted when first asked for, and kept."""

from collections.abc import Callable
from dataclasses import dataclass, field

from quizroom.knowledge.catalogue import Catalogue
from quizroom.knowledge.model import Region
from quizroom.questions.blueprint import MOST_WARM_UPS
from quizroom.questions.cells import CellYield, cell_yields, most_of, regions_of, warm_up_asks
from quizroom.questions.deck import ALL_FORMATS, LETTERED
from quizroom.questions.syllabus import syllabus_of


@dataclass(frozen=True, slots=True, kw_only=True)
class Yields:
    """The grid of a course list."""

    regions: tuple[Region, ...]
    cells: tuple[CellYield, ...]
    warm_ups: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Blueprints:
    """Counts what cells yield. `breathe` lets the rooms be served between two items of a count."""

    catalogue: Catalogue
    breathe: Callable[[], None] = lambda: None
    counted: dict[tuple[str, bool], Yields] = field(default_factory=dict)

    def yields(self, course: str, *, typed: bool) -> Yields:
        """The grid of a course list that is there, with typed answers or without."""
        if (course, typed) not in self.counted:
            self.counted[course, typed] = self._count(course, typed=typed)
        return self.counted[course, typed]

    def _count(self, course: str, *, typed: bool) -> Yields:
        syllabus = syllabus_of(self.catalogue, self.catalogue.courses[course])
        formats = ALL_FORMATS if typed else LETTERED
        warm_ups = most_of(syllabus, warm_up_asks(syllabus, formats), formats, self.breathe)
        return Yields(
            regions=regions_of(syllabus),
            cells=tuple(cell_yields(syllabus, formats, self.breathe)),
            warm_ups=min(MOST_WARM_UPS, warm_ups),
        )
