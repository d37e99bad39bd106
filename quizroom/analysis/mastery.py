"""What a class has and has not got: muscle by family, in marks."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from typing import Literal

from quizroom.questions.model import Family, Item

Standing = Literal["not yet", "in part", "has it"]
OWN = "own items"
"""Where items stand that a host wrote and that name no muscle."""
NOT_YET_BELOW, HAS_IT_ABOVE = 0.35, 0.70
"""By these a class's first answers are acted on in peer instruction: explain again, let them talk, go on
(Vickrey et al. 2015, CBE Life Sci Educ 14:es3)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Share:
    """The mean mark of so many answers, 0 to 1."""

    answers: int
    marks: float

    @property
    def mean(self) -> float:
        """Marks for each answer; of no answer 0."""
        return self.marks / self.answers if self.answers else 0.0

    def plus(self, other: "Share") -> "Share":
        """Both together."""
        return Share(answers=self.answers + other.answers, marks=self.marks + other.marks)


@dataclass(frozen=True, slots=True, kw_only=True)
class Mastery:
    """The map: a row for each muscle, the least known first, a column for each family that was asked.

    Empty cells are absent.
    """

    muscles: tuple[str, ...]
    families: tuple[Family, ...]
    cells: dict[tuple[str, Family], Share]

    def is_several(self, muscle: str) -> bool:
        """Whether more than one family was asked of a muscle."""
        return sum(name == muscle for name, _ in self.cells) > 1

    def row(self, muscle: str) -> Share:
        """All families of one muscle together."""
        return _together(share for (name, _), share in self.cells.items() if name == muscle)


def standing_of(share: float) -> Standing:
    """Below 35 % not yet, up to 70 % in part, above has it."""
    if share < NOT_YET_BELOW:
        return "not yet"
    return "in part" if share <= HAS_IT_ABOVE else "has it"


def mastery_of(answers: Iterable[tuple[Item, Share]]) -> Mastery:
    """The map of some items with what was answered; an item on several muscles counts for each of them."""
    cells: dict[tuple[str, Family], Share] = {}
    for item, share in answers:
        if share.answers:
            for muscle in muscles_of(item):
                known = cells.get((muscle, item.family), Share(answers=0, marks=0.0))
                cells[muscle, item.family] = known.plus(share)
    families = tuple(sorted({family for _, family in cells}))
    found = Mastery(muscles=(), families=families, cells=cells)
    muscles = sorted({muscle for muscle, _ in cells}, key=lambda one: (found.row(one).mean, one))
    return replace(found, muscles=tuple(muscles))


def muscles_of(item: Item) -> tuple[str, ...]:
    """The names of the muscles that an item is about; where it has no record, its subject."""
    names = tuple(dict.fromkeys(record.name for record in item.records))
    return names or ((OWN,) if item.by_host else (item.subject,))


def _together(shares: Iterable[Share]) -> Share:
    total = Share(answers=0, marks=0.0)
    for share in shares:
        total = total.plus(share)
    return total
