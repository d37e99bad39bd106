"""The blueprint of a review: how many rounds each family gets in each region (a table of specifications)."""

from collections import Counter
from collections.abc import Container
from dataclasses import dataclass
from typing import Literal

from quizroom.questions.model import Family

Aim = Literal["easy", "mixed", "hard"]
"""Which items are taken where there is a choice, by their predicted difficulty."""

MOST_ROUNDS = 60
MOST_WARM_UPS = 3


@dataclass(frozen=True, slots=True, kw_only=True)
class Cell:
    """So many rounds of one family about the muscles of one region."""

    region: str
    family: Family
    rounds: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Blueprint:
    """A grid of cells, and how its rounds follow each other.

    Warm-up rounds ask about landmarks and movement words; they come first, beside the rounds of the grid.
    """

    cells: tuple[Cell, ...]
    interleave: bool = True
    """Whether muscles that are easily mixed up follow each other; else one compartment follows another."""
    warm_up: int = 0
    aim: Aim = "mixed"

    @property
    def rounds(self) -> int:
        """All rounds, those to warm up included."""
        return self.warm_up + sum(cell.rounds for cell in self.cells)


def problem_of(blueprint: Blueprint, regions: Container[str], families: Container[str]) -> str:
    """What is wrong with a blueprint before anything is dealt, as a sentence; empty if nothing is.

    Args:
        blueprint: the grid.
        regions: ids of the regions that the course list reaches.
        families: the families that it examines.
    """
    for cell in blueprint.cells:
        if cell.region not in regions:
            return f'The course list has no muscle in the region "{cell.region}".'
        if cell.family not in families:
            return f'The course list does not examine "{cell.family}".'
        if cell.rounds < 0:
            return f"{cell.region}, {cell.family}: {cell.rounds} rounds cannot be dealt."
    twice = [
        cell for cell, times in Counter((c.region, c.family) for c in blueprint.cells).items() if times > 1
    ]
    if twice:
        return f"{twice[0][0]}, {twice[0][1]}: this cell comes twice in the blueprint."
    if not 0 <= blueprint.warm_up <= MOST_WARM_UPS:
        return f"A review has at most {MOST_WARM_UPS} rounds to warm up."
    if not 1 <= blueprint.rounds <= MOST_ROUNDS:
        return f"A review has 1 to {MOST_ROUNDS} rounds; the blueprint asks for {blueprint.rounds}."
    return ""
