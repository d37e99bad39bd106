"""Rules for a whole review, and that dealt reviews keep them."""

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from quizroom.questions.deck import DealPlan, deal_from
from quizroom.questions.model import Item
from quizroom.questions.review_rules import (
    chi_square,
    key_positions,
    keys_have_a_habit,
    repeated_facts,
)
from tests.questions.lists import REGIONAL, examined, syllabus


def review(seed: int, rounds: int = 12) -> tuple[Item, ...]:
    return deal_from(syllabus(REGIONAL), DealPlan(families=examined(REGIONAL), rounds=rounds, seed=seed))


@settings(max_examples=25)
@given(st.integers(0, 10_000))
def test_a_dealt_review_repeats_no_fact(seed: int) -> None:
    assert repeated_facts(review(seed)) == ()


def test_a_fact_that_comes_twice_is_found() -> None:
    items = review(1)
    assert repeated_facts((*items, items[0])) == items[0].facts


def test_the_key_stands_at_every_place_equally_often_over_many_reviews() -> None:
    """Chi-square at the 0.1 % point; a habit would show in so many rounds."""
    items = [item for seed in range(80) for item in review(seed, rounds=20)]
    for size in (3, 4):
        assert key_positions(items, size).total() > 30
        assert not keys_have_a_habit(items, size)


def test_a_habit_is_found() -> None:
    four = next(item for item in review(1, rounds=30) if len(item.options) == 4)
    assert keys_have_a_habit([replace(four, key=("B",))] * 40)


@pytest.mark.parametrize("counts,value", [((10, 10, 10, 10), 0), ((16, 8, 8, 8), 4.8), ((20, 0), 20)])
def test_chi_square_is_pearsons(counts: tuple[int, ...], value: float) -> None:
    """Worked by hand."""
    assert chi_square(counts) == pytest.approx(value)
