"""The grid of a course list, for the desk: what each cell yields, and an even share of the rounds."""

from collections.abc import Container

from quizroom.protocol.blueprint import BlueprintGrid, CellLine, RegionLine
from quizroom.questions.blueprint import MOST_ROUNDS
from quizroom.questions.sharing import even_rounds
from quizroom.service.blueprints import Blueprints


def blueprint_grid(
    blueprints: Blueprints, course: str, *, families: Container[str] | None, rounds: int, typed: bool
) -> BlueprintGrid:
    """The whole grid, with so many rounds shared out evenly over these families, or over all if None."""
    yields = blueprints.yields(course, typed=typed)
    wanted = [cell for cell in yields.cells if families is None or cell.family in families]
    shares = dict(zip(wanted, even_rounds(wanted, max(0, min(rounds, MOST_ROUNDS))), strict=True))
    return BlueprintGrid(
        course=course,
        regions=tuple(RegionLine(id=region.id, name=region.name) for region in yields.regions),
        families=tuple(dict.fromkeys(cell.family for cell in yields.cells)),
        cells=tuple(
            CellLine(
                region=cell.region,
                family=cell.family,
                most=cell.most,
                reason=cell.reason,
                rounds=shares.get(cell, 0),
            )
            for cell in yields.cells
        ),
        warm_ups=yields.warm_ups,
    )
