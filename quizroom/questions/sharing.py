"""Sharing out whole rounds: by weights, or evenly over a grid."""

from collections import Counter
from collections.abc import Sequence

from quizroom.questions.cells import CellYield


def whole_rounds(weights: Sequence[int], rounds: int) -> tuple[int, ...]:
    """Rounds shared out by weights, by the method of the largest remainder (Hare quota; ties to the earlier).

    The shares add up to `rounds`, each is within one of its exact share; without any weight all are 0.
    Whole numbers throughout, so that no rounding error decides.

    Raises:
        ValueError: for a negative number.
    """
    if rounds < 0 or any(weight < 0 for weight in weights):
        raise ValueError("weights and rounds are not negative")
    total = sum(weights)
    if not total:
        return (0,) * len(weights)
    shares = [weight * rounds // total for weight in weights]
    order = sorted(range(len(weights)), key=lambda place: (-(weights[place] * rounds % total), place))
    for place in order[: rounds - sum(shares)]:
        shares[place] += 1
    return tuple(shares)


def even_rounds(yields: Sequence[CellYield], rounds: int) -> tuple[int, ...]:
    """Rounds shared out over the cells that can take them, as evenly by region and by family as may be.

    Fewer than `rounds` in all only if every cell is full.
    """
    given = [0] * len(yields)
    rows: Counter[str] = Counter()
    columns: Counter[str] = Counter()
    for _ in range(rounds):
        open_places = [place for place, cell in enumerate(yields) if given[place] < cell.most]
        if not open_places:
            break
        place = min(
            open_places,
            key=lambda one: (rows[yields[one].region], columns[yields[one].family], given[one], one),
        )
        given[place] += 1
        rows[yields[place].region] += 1
        columns[yields[place].family] += 1
    return tuple(given)
