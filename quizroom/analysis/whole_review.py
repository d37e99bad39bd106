"""The numbers of a review as a whole: reliability and Rasch's scale."""

from collections import Counter
from collections.abc import Callable
from dataclasses import dataclass
from math import sqrt

from quizroom.analysis.ability import Ability, abilities
from quizroom.analysis.rasch import Estimate, conditional, is_connected, prox, usable
from quizroom.analysis.reliability import Alpha, alpha, kr_20, kr_21, spearman_brown, standard_error
from quizroom.analysis.responses import Responses

FEWEST_ITEMS, FEWEST_PEOPLE = 2, 2


@dataclass(frozen=True, slots=True, kw_only=True)
class Reliability:
    """How well the marks would hold. KR-20 and KR-21 are over the items of 0 and 1 alone, alpha over all."""

    people: int
    """Who answered every item: of them are KR-20, KR-21, mean and errors."""
    items: int
    of_0_and_1: int
    mean: float
    kr_20: float | None
    kr_21: float | None
    alpha: Alpha | None
    """Over those who answered every item."""
    alpha_of_all: Alpha | None
    """Over everybody, missing answers left out pair by pair."""
    everybody: int
    error: float | None
    """SEM in marks, from alpha, with the divisor N - 1."""
    error_n: float | None
    """The same with the divisor N."""
    twice: float | None
    """Alpha of a review twice as long (Spearman & Brown)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Placed:
    """An item on Rasch's scale, by its round."""

    round: int
    conditional: Estimate
    prox: Estimate


@dataclass(frozen=True, slots=True, kw_only=True)
class Scale:
    """Items and raw scores on one scale, in logits. People are only counted."""

    people: int
    items: tuple[Placed, ...]
    left_out: tuple[int, ...]
    """Rounds in which everybody or nobody was right: they have no finite place."""
    scores: tuple[Ability, ...]
    reached: dict[int, int]
    """How many people have each raw score over these items."""

    @property
    def is_blurred(self) -> bool:
        """Whether the errors of the items exceed their spread, so that their order says little."""
        values = [one.conditional.value for one in self.items]
        spread = sqrt(sum(value * value for value in values) / max(1, len(values) - 1))
        return sum(one.conditional.error for one in self.items) / len(values) > spread


def reliability_of(responses: Responses, breathe: Callable[[], None] = lambda: None) -> Reliability | None:
    """None with fewer than two items or two players who answered them all; `breathe` is called in between."""
    people, columns = responses.complete(), responses.columns
    if len(columns) < FEWEST_ITEMS or len(people) < FEWEST_PEOPLE:
        return None
    rows = [[column.marks[player] for column in columns] for player in people]
    plain = [place for place, column in enumerate(columns) if column.is_right_or_wrong]
    simple = [[row[place] for place in plain] for row in rows]
    totals, found = [sum(row) for row in rows], alpha(rows, breathe)
    value = None if found is None else found.value
    everybody = [[column.marks.get(one) for column in columns] for one in responses.players]
    return Reliability(
        people=len(people),
        items=len(columns),
        of_0_and_1=len(plain),
        mean=sum(totals) / len(totals),
        kr_20=kr_20(simple),
        kr_21=kr_21(simple),
        alpha=found,
        alpha_of_all=alpha(everybody, breathe),
        everybody=len(responses.players),
        error=None if value is None else standard_error(totals, value, divisor=len(totals) - 1),
        error_n=None if value is None else standard_error(totals, value, divisor=len(totals)),
        twice=None if value is None else spearman_brown(value, 2),
    )


def scale_of(responses: Responses, breathe: Callable[[], None] = lambda: None) -> Scale | None:
    """Rasch's scale over the items of 0 and 1 and those who answered them all.

    None if fewer than two items or two players are left once nothing and everything right is left out, or if
    some items lie beyond all others.
    """
    plain = responses.only(lambda column: column.is_right_or_wrong)
    columns = plain.columns
    fits = usable([[column.marks[player] for column in columns] for player in plain.complete()])
    few = len(fits.items) < FEWEST_ITEMS or len(fits.rows) < FEWEST_PEOPLE
    if few or not is_connected(fits.rows):
        return None
    rounds = [columns[item].current.number for item in fits.items]
    found = conditional(fits.rows, breathe)
    whole = [[columns[item].marks[player] for item in fits.items] for player in plain.complete()]
    return Scale(
        people=len(fits.rows),
        items=tuple(
            Placed(round=number, conditional=one, prox=other)
            for number, one, other in zip(rounds, found, prox(fits.rows), strict=True)
        ),
        left_out=tuple(one.current.number for one in columns if one.current.number not in rounds),
        scores=tuple(abilities([one.value for one in found])),
        reached=dict(sorted(Counter(round(sum(row)) for row in whole).items())),
    )
