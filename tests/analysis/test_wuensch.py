"""Published data through every formula: a whole review, and the formulas by themselves."""

from functools import cache

import pytest

from quizroom.analysis.ability import abilities, chance
from quizroom.analysis.intervals import wilson
from quizroom.analysis.item_numbers import corrected_for_guessing
from quizroom.analysis.rasch import conditional, prox
from quizroom.analysis.reliability import alpha, kr_20, kr_21, spearman_brown, standard_error
from quizroom.analysis.review_report import ReviewReport, review_report
from quizroom.analysis.upper_lower import discrimination, groups_of
from quizroom.marking import marks_of_room
from tests.analysis.wuensch import (
    ANSWERS,
    CONDITIONAL,
    CORRECTED,
    MEANS,
    PQ,
    PROX,
    ROWS,
    TOTALS,
    VARIANCE,
    D,
    P,
    wuensch_room,
)


@cache
def report() -> ReviewReport:
    room = wuensch_room()
    return review_report(room, marks_of_room(room))


def test_the_data_are_those_that_were_published() -> None:
    mean = sum(TOTALS) / 10
    assert sum((total - mean) ** 2 for total in TOTALS) / 10 == pytest.approx(VARIANCE)
    assert [round(p * (1 - p), 2) for p in P] == PQ
    assert sum(PQ) == pytest.approx(2.18)


def test_difficulties_are_as_published() -> None:
    assert [sheet.numbers.difficulty for sheet in report().sheets] == pytest.approx(P)


def test_the_corrected_point_biserials() -> None:
    found = [sheet.numbers.point_biserial for sheet in report().sheets]
    assert [round(value or 0, 4) for value in found] == CORRECTED


def test_discrimination_by_fractional_groups() -> None:
    numbers = [sheet.numbers for sheet in report().sheets]
    assert [round(one.discrimination or 0, 3) for one in numbers] == D
    assert {one.group for one in numbers} == {3}


def test_kelleys_groups_of_forty_have_eleven_places() -> None:
    """N = 40, n = 11, 9 against 3 right: D = 0.545 (a published example)."""
    totals = {f"p{number}": float(number) for number in range(40)}
    right = {f"p{number}": float(number in (0, 1, 2, *range(31, 40))) for number in range(40)}
    assert groups_of(totals).size == 11
    assert discrimination(right, totals) == pytest.approx(6 / 11)
    assert round(6 / 11, 3) == 0.545


def test_reliability_of_the_review() -> None:
    found = report().reliability
    assert found is not None
    assert (found.people, found.items, found.of_0_and_1) == (10, 10, 10)
    assert found.kr_20 == pytest.approx(0.6963, abs=5e-5)
    assert found.kr_21 == pytest.approx(0.6842, abs=5e-5)
    assert found.alpha is not None
    assert found.alpha.value == pytest.approx(found.kr_20)
    assert found.error_n == pytest.approx(1.3317, abs=5e-5)
    assert found.error == pytest.approx(1.4037, abs=5e-5)
    assert found.twice == pytest.approx(0.8210, abs=5e-5)


def test_the_formulas_by_themselves() -> None:
    r = kr_20(ROWS)
    assert r is not None
    assert round(r, 4) == 0.6963
    assert round(kr_21(ROWS) or 0, 4) == 0.6842
    assert round(spearman_brown(r, 3) or 0, 4) == 0.8731
    assert round(standard_error(TOTALS, r, divisor=9), 4) == 1.4037
    # pq with N but the variance with N - 1 is the common mistake: 0.7378
    mixed = 10 / 9 * (1 - sum(PQ) / (VARIANCE * 10 / 9))
    assert round(mixed, 4) == 0.7378 != round(r, 4)


def test_rasch_by_both_ways() -> None:
    scale = report().scale
    assert scale is not None
    assert [round(one.prox.value, 4) for one in scale.items] == PROX
    assert [one.conditional.value for one in scale.items] == pytest.approx(CONDITIONAL, abs=1e-4)
    assert all(0.79 < one.prox.error < 1.0 for one in scale.items)
    assert scale.is_blurred
    assert scale.people == 10
    assert scale.reached == {2: 2, 7: 4, 8: 2, 9: 2}


def test_abilities_for_five_items() -> None:
    found = abilities((-1.5, -0.5, 0, 0.5, 1.5))
    assert [round(one.estimate.value, 4) for one in found[1:-1]] == [-1.6638, -0.4967, 0.4967, 1.6638]
    assert [round(one.estimate.error, 4) for one in found[1:-1]] == [1.1996, 1.0083, 1.0083, 1.1996]
    assert [one.is_extreme for one in found] == [True, False, False, False, False, True]
    assert found[0].estimate.value == pytest.approx(-found[5].estimate.value)


def test_the_curve_of_the_model() -> None:
    values = [round(chance(ability, 0.0), 4) for ability in (-2, -1, 0, 1, 2, 3)]
    assert values == [0.1192, 0.2689, 0.5, 0.7311, 0.8808, 0.9526]


@pytest.mark.parametrize("options,left", [(2, 10), (3, 12.5), (4, 13.33), (5, 13.75)])
def test_correction_for_guessing(options: int, left: float) -> None:
    assert corrected_for_guessing(15, 5, options) == pytest.approx(left, abs=0.005)


@pytest.mark.parametrize("right,people,low,high", [(17, 24, 0.508, 0.851), (12, 20, 0.387, 0.781)])
def test_wilsons_interval(right: int, people: int, low: float, high: float) -> None:
    found = wilson(right, people)
    assert (round(found.low, 3), round(found.high, 3)) == (low, high)


def test_nothing_is_judged_among_ten() -> None:
    assert [sheet.numbers.verdict for sheet in report().sheets] == [None] * 10
    assert all(sheet.numbers.distractors for sheet in report().sheets)
    assert {
        sheet.numbers.distractors and sheet.numbers.distractors.efficiency for sheet in report().sheets
    } == {None}


def test_the_whole_is_as_its_parts() -> None:
    assert report().marks.mean == pytest.approx(sum(TOTALS) / 100)
    assert len(report().attendance) == len(ANSWERS)
    assert [one.value for one in prox(ROWS)] == pytest.approx(PROX, abs=5e-5)
    assert sum(one.value for one in conditional(ROWS)) == pytest.approx(0)
    assert alpha(ROWS) is not None
    assert MEANS["H"] == 0.9
