"""The blueprint of a review: how many rounds each family gets in each region (a table of specifications)."""

from collections import Counter
from collections.abc import Container, Sequence
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
    """Whether muscles that are easily mixed up follow each other, instead of one compartment after the other."""
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
    twice = [cell for cell, times in Counter((c.region, c.family) for c in blueprint.cells).items() if times > 1]
    if twice:
        return f"{twice[0][0]}, {twice[0][1]}: this cell comes twice in the blueprint."
    if not 0 <= blueprint.warm_up <= MOST_WARM_UPS:
        return f"A review has at most {MOST_WARM_UPS} rounds to warm up."
    if not 1 <= blueprint.rounds <= MOST_ROUNDS:
        return f"A review has 1 to {MOST_ROUNDS} rounds; the blueprint asks for {blueprint.rounds}."
    return ""


def whole_rounds(weights: Sequence[int], rounds: int, most: Sequence[int] | None = None) -> tuple[int, ...]:
    """Rounds shared out by weights, by the method of the largest remainder (Hare quota; ties to the earlier).

    What a place cannot take (`most`) goes to the others by their weights. The shares add up to `rounds`,
    unless all places that have a weight are full.

    Raises:
        ValueError: for a negative number.
    """
    if rounds < 0 or any(weight < 0 for weight in weights):
        raise ValueError("weights and rounds are not negative")
    limits = most or [rounds] * len(weights)
    given = [0] * len(weights)
    while open_places := [n for n, weight in enumerate(weights) if weight and given[n] < limits[n]]:
        left = rounds - sum(given)
        if not left:
            break
        shares = _largest_remainder([weights[n] for n in open_places], left)
        for place, share in zip(open_places, shares, strict=True):
            given[place] = min(limits[place], given[place] + share)
    return tuple(given)


def _largest_remainder(weights: Sequence[int], rounds: int) -> list[int]:
    """Whole shares of `rounds`; whole numbers throughout, so that no rounding error decides."""
    total = sum(weights)
    shares = [weight * rounds // total for weight in weights]
    remainders = [weight * rounds % total for weight in weights]
    order = sorted(range(len(weights)), key=lambda place: (-remainders[place], place))
    for place in order[: rounds - sum(shares)]:
        shares[place] += 1
    return shares
