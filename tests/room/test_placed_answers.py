"""Which form an order of letters, or a letter for each row, must have."""

import pytest

from quizroom.questions.model import Item
from quizroom.room.rules import decide
from tests.room.refusing import code_of
from tests.room.sample_items import matching, one_best, ordering
from tests.room.samples import after, answering, ordered, says


def test_an_order_is_kept_as_it_was_given() -> None:
    room = ordered(answering(ordering()), says("ada", *"DBAC"))
    assert room.rounds[0].answers["ada"].choice == ("D", "B", "A", "C")
    assert decide(room, says("ada", *"DBAC"), after(1)) == ()
    assert decide(room, says("ada", *"BDAC"), after(1)) != ()


@pytest.mark.parametrize("letters", ["ABC", "ABCDA", "ABCC", "ABCE"])
def test_an_order_holds_every_letter_once(letters: str) -> None:
    assert code_of(answering(ordering()), says("ada", *letters)) == "bad_choice"


def test_rows_keep_their_letters_also_twice_and_empty_ones() -> None:
    room = ordered(answering(matching()), says("ada", "B", "", "B"))
    assert room.rounds[0].answers["ada"].choice == ("B", "", "B")


@pytest.mark.parametrize("letters", ["A", "AB", "ABCD", "ABE"])
def test_rows_want_one_known_letter_each(letters: str) -> None:
    assert code_of(answering(matching()), says("ada", *letters)) == "bad_choice"


@pytest.mark.parametrize("item", [ordering(), matching()])
@pytest.mark.parametrize("letters", [(), ("", "", "")])
def test_nothing_chosen_is_no_answer(item: Item, letters: tuple[str, ...]) -> None:
    assert code_of(answering(item), says("ada", *letters)) == "empty_answer"


def test_an_empty_letter_is_none_for_other_items() -> None:
    assert code_of(answering(one_best()), says("ada", "")) == "bad_choice"
