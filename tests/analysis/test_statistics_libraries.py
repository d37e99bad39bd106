"""The same numbers from reference libraries, which only tests load."""

from random import Random

import numpy as np
import pandas as pd
import pingouin
import pytest
from girth import rasch_conditional
from girth.synthetic import create_synthetic_irt_dichotomous
from scipy.stats import f, pearsonr, pointbiserialr
from sklearn.metrics import confusion_matrix, matthews_corrcoef

from quizroom.analysis.confusions import confusions_of
from quizroom.analysis.correlation import correlation_interval, pearson
from quizroom.analysis.f_distribution import f_quantile
from quizroom.analysis.rasch import conditional, is_connected, usable
from quizroom.analysis.reliability import alpha
from quizroom.analysis.responses import responses_of
from quizroom.marking import marks_of_room
from tests.analysis.wuensch import ANSWERS, COLUMNS, ROWS, TOTALS, wuensch_room


def test_point_biserials_are_those_of_scipy() -> None:
    """Items 1, 3 and 9 uncorrected: 0.7946, 0.2027, 0.0828."""
    for column in COLUMNS:
        rest = [total - mark for total, mark in zip(TOTALS, column, strict=True)]
        assert pearson(column, rest) == pytest.approx(pointbiserialr(column, rest).statistic, abs=1e-12)
    uncorrected = [pearson(COLUMNS[item], TOTALS) for item in (0, 2, 8)]
    assert uncorrected == pytest.approx([0.7946, 0.2027, 0.0828], abs=5e-5)


def test_correlations_and_their_intervals_are_those_of_scipy() -> None:
    dice = Random(27)  # noqa: S311 - numbers to compare with, no secret
    one = [dice.random() for _ in range(12)]
    other = [value + dice.random() for value in one]
    known = pearsonr(one, other)
    found = pearson(one, other)
    assert found == pytest.approx(known.statistic, abs=1e-12)
    low, high = known.confidence_interval()
    interval = correlation_interval(found or 0, 12)
    assert (interval.low, interval.high) == pytest.approx((low, high), abs=1e-9)


def test_a_correlation_of_two_items_is_the_coefficient_of_scikit_learn() -> None:
    """Of two rows of 0 and 1 Pearson's correlation is phi, there called Matthews'."""
    for column in COLUMNS[1:]:
        phi = matthews_corrcoef(COLUMNS[0], column)
        assert pearson(COLUMNS[0], column) == pytest.approx(phi, abs=1e-12)


def test_confusions_are_the_matrix_of_scikit_learn() -> None:
    room = wuensch_room()
    responses = responses_of(room, marks_of_room(room))
    taken = [
        (option.text, chosen.text)
        for column in responses.columns
        for option in column.current.item.options
        if option.letter in column.current.item.key
        for player in column.marks
        for chosen in column.current.item.options
        if chosen.letter in column.current.answers[player].choice
    ]
    texts = sorted({text for pair in taken for text in pair})
    matrix = confusion_matrix(*zip(*taken, strict=True), labels=texts)
    found = confusions_of(zip(responses.columns, marks_of_room(room).rounds, strict=True))
    by_pair = {(one.wanted, one.taken): one.people for one in found}
    for row, wanted in enumerate(texts):
        for column, given in enumerate(texts):
            if wanted != given:
                assert by_pair.get((wanted, given), 0) == matrix[row][column]
    assert sum(by_pair.values()) == 100 - round(sum(TOTALS))


@pytest.mark.parametrize("probability", [0.025, 0.5, 0.975])
@pytest.mark.parametrize("first,second", [(9, 81), (1, 1), (14, 126), (199, 11741), (2, 500)])
def test_quantiles_of_f_are_those_of_scipy(probability: float, first: int, second: int) -> None:
    known = f.ppf(probability, first, second)
    assert f_quantile(probability, first, second) == pytest.approx(known, rel=1e-8)


def test_alpha_of_the_published_review() -> None:
    value, (low, high) = pingouin.cronbach_alpha(data=pd.DataFrame(ROWS))
    found = alpha(ROWS)
    assert found is not None
    assert found.value == pytest.approx(value, abs=1e-12)
    assert round(found.value, 4) == 0.6963
    assert (round(found.interval.low, 3), round(found.interval.high, 3)) == (low, high) == (0.309, 0.911)


def test_alpha_of_marks_that_are_not_0_and_1() -> None:
    """The library's data set `cronbach_alpha`: 15 subjects, 10 items, 0.5917 [0.195, 0.840]."""
    data = pingouin.read_dataset("cronbach_alpha").pivot(index="Subj", columns="Items", values="Scores")
    found = alpha(data.to_numpy().tolist())
    assert found is not None
    assert round(found.value, 4) == 0.5917
    assert (round(found.interval.low, 3), round(found.interval.high, 3)) == (0.195, 0.840)


def test_alpha_where_marks_are_missing() -> None:
    """The data set `cronbach_wide_missing`: 0.7327 [0.435, 0.909] pair by pair, 0.8017 of complete rows."""
    data = pingouin.read_dataset("cronbach_wide_missing")
    rows = [[None if np.isnan(mark) else float(mark) for mark in row] for row in data.to_numpy()]
    found = alpha(rows)
    assert found is not None
    assert round(found.value, 4) == 0.7327
    assert (round(found.interval.low, 3), round(found.interval.high, 3)) == (0.435, 0.909)
    complete = alpha([row for row in rows if None not in row])
    assert complete is not None
    assert round(complete.value, 4) == 0.8017


def test_conditional_difficulties_are_those_of_girth() -> None:
    known = rasch_conditional(np.array(COLUMNS, dtype=int))["Difficulty"]
    assert [one.value for one in conditional(ROWS)] == pytest.approx(known.tolist(), abs=1e-3)


def test_conditional_difficulties_are_those_that_girth_tests_itself_by() -> None:
    """Its own regression test: 600 simulated people, 5 items; printed values there to six places."""
    dice = np.random.default_rng(1643242198124)
    truth = np.linspace(-1.5, 1.5, 5)
    simulated = create_synthetic_irt_dichotomous(truth, 1, dice.standard_normal(600), seed=dice)
    found = conditional(usable(simulated.T.astype(float).tolist()).rows)
    printed = [-1.543584, -0.732148, -0.01494, 0.768816, 1.521855]
    # The library stops at steps below 0.001.
    assert [one.value for one in found] == pytest.approx(printed, abs=1e-3)
    assert all(abs(one.value - item) < 2 * one.error for one, item in zip(found, truth, strict=True))


def test_no_finite_difficulty_is_made_up() -> None:
    assert is_connected(ROWS)
    beyond = [[1.0, 0, 0, 0], [0, 1.0, 0, 0], [1.0, 1.0, 1.0, 0], [1.0, 1.0, 0, 1.0]]
    assert usable(beyond).rows == beyond
    assert not is_connected(beyond)
    assert len(ANSWERS) == 10
