"""The score interval of a share."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import binomtest

from quizroom.analysis.intervals import wilson


@pytest.mark.parametrize(
    # the trade's handbook 4.5, computed with statsmodels
    "right,total,low,high",
    [(17, 24, 0.508, 0.851), (12, 20, 0.387, 0.781)],
)
def test_the_bounds_are_those_of_the_handbook(right: int, total: int, low: float, high: float) -> None:
    found = wilson(right, total)
    assert (round(found.low, 3), round(found.high, 3)) == (low, high)


@given(st.integers(1, 500).flatmap(lambda total: st.tuples(st.integers(0, total), st.just(total))))
def test_the_bounds_are_those_of_scipy(counted: tuple[int, int]) -> None:
    right, total = counted
    expected = binomtest(right, total).proportion_ci(method="wilson")
    found = wilson(right, total)
    assert (found.low, found.high) == pytest.approx((expected.low, expected.high), abs=1e-9)
    assert 0 <= found.low <= right / total <= found.high <= 1


def test_of_nobody_anything_may_be_true() -> None:
    assert (wilson(0, 0).low, wilson(0, 0).high) == (0, 1)
