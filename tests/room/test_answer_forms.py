"""Which form an answer must have to fit its item, and in which it is kept."""

import pytest

from quizroom.room.commands import (
    SubmitAnswer,
)
from quizroom.room.rules import decide
from tests.room.refusing import code_of
from tests.room.sample_items import free_list, one_best, pick_three, typed
from tests.room.samples import after, answering, choice_of, ordered, says, writes


@pytest.mark.parametrize(
    "order", [says("ada"), writes("ada"), writes("ada", " ", "\t"), writes("ada", "radial nerve")]
)
def test_an_item_with_options_wants_letters(order: SubmitAnswer) -> None:
    assert code_of(answering(one_best()), order) == "empty_answer"


@pytest.mark.parametrize(
    "order",
    [
        says("ada", "E"),
        says("ada", "b"),
        says("ada", "A", "B"),
        SubmitAnswer(player="ada", round=1, choice=("B",), typed=("axillary nerve",)),
    ],
)
def test_letters_must_fit_the_item(order: SubmitAnswer) -> None:
    assert code_of(answering(one_best()), order) == "bad_choice"


def test_a_set_takes_up_to_its_size_in_one_order_and_each_once() -> None:
    room = answering(pick_three())
    assert choice_of(ordered(room, says("ada", "E", "A", "E", "C"))) == ("A", "C", "E")
    assert choice_of(ordered(room, says("ada", "D"))) == ("D",)
    assert code_of(room, says("ada", "A", "B", "C", "D")) == "bad_choice"


def test_the_same_letters_in_another_order_are_the_same_answer() -> None:
    room = ordered(answering(pick_three()), says("ada", "C", "A"))
    assert decide(room, says("ada", "A", "C", "A"), after(1)) == ()


def test_typed_words_are_kept_as_written_but_for_spaces() -> None:
    room = ordered(answering(free_list()), writes("ada", "  Biceps   brachii ", "", "BRACHIALIS"))
    assert room.rounds[0].answers["ada"].typed == ("Biceps brachii", "BRACHIALIS")


@pytest.mark.parametrize(
    "order",
    [
        writes("ada", "a", "b"),
        writes("ada", "x" * 81),
        SubmitAnswer(player="ada", round=1, choice=("A",), typed=("axillary nerve",)),
    ],
)
def test_typed_words_must_fit_the_item(order: SubmitAnswer) -> None:
    assert code_of(answering(typed()), order) == "bad_choice"


def test_a_typed_item_wants_words() -> None:
    assert code_of(answering(typed()), says("ada", "B")) == "empty_answer"
