"""What orders and matched rows are worth."""

from itertools import permutations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import kendalltau

from quizroom.marking import mark_of, mark_of_order
from quizroom.questions.model import Item
from quizroom.room.state import Answer
from tests.room.sample_items import matching, ordering
from tests.room.samples import NOON


def chosen(letters: str) -> Answer:
    return Answer(choice=tuple(letter.strip() for letter in letters), typed=(), at=NOON)


def test_one_pair_of_neighbours_exchanged_among_four_leaves_two_thirds() -> None:
    """Kendall's tau by its definition: of six pairs five are right and one is not, so (5 - 1) / 6."""
    assert mark_of_order("1234", "1243") == pytest.approx(0.6667, abs=0.00005)


@pytest.mark.parametrize("size", [2, 3, 4, 5])
def test_every_order_has_the_mark_that_scipy_finds(size: int) -> None:
    """Kendall's tau as SciPy computes it, but never less than 0."""
    right = "ABCDE"[:size]
    for answer in permutations(right):
        tau = kendalltau(range(size), [answer.index(letter) for letter in right]).statistic
        assert mark_of_order(right, answer) == pytest.approx(max(0.0, tau)), answer


@pytest.mark.parametrize("letters,mark", [("CADB", 1), ("CABD", 0.667), ("ACBD", 0.333), ("BDAC", 0)])
def test_an_order_is_marked_against_the_key_not_the_alphabet(letters: str, mark: float) -> None:
    assert round(mark_of(ordering(key="CADB"), chosen(letters)), 3) == mark


@given(st.permutations("ABCD"), st.permutations("ABCD"))
def test_only_the_right_order_is_worth_all_and_names_of_letters_do_not_matter(
    key: list[str], answer: list[str]
) -> None:
    renamed = dict(zip("ABCD", "DBAC", strict=True))
    mark = mark_of_order(key, answer)
    assert mark == mark_of_order([renamed[one] for one in key], [renamed[one] for one in answer])
    assert 0 <= mark <= 1
    assert (mark == 1) == (key == answer)


@pytest.mark.parametrize(
    "letters,mark", [("DAB", 1), ("DAC", 0.667), ("D B", 0.667), ("  B", 0.333), ("AAA", 0.333), ("ABC", 0)]
)
def test_a_matching_is_worth_the_share_of_rows_that_are_right(letters: str, mark: float) -> None:
    assert round(mark_of(matching(key="DAB"), chosen(letters)), 3) == mark


@pytest.mark.parametrize("item", [ordering(), matching()])
def test_no_answer_has_no_mark(item: Item) -> None:
    assert mark_of(item, None) == 0
