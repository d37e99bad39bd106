"""Items added to a review beside those that were dealt."""

import pytest

from quizroom.questions.blueprint import MOST_ROUNDS
from quizroom.room.adding import AddItem
from quizroom.room.commands import EndReview, OpenRound
from tests.room.refusing import code_of
from tests.room.sample_items import one_best, typed
from tests.room.samples import gathered, ordered, prepared


@pytest.mark.parametrize("position,order", [(0, "fab"), (1, "afb"), (2, "abf"), (9, "abf")])
def test_an_item_is_put_in_its_place_and_later_ones_move_down(position: int, order: str) -> None:
    room = prepared(one_best("a"), one_best("b"))
    after = ordered(room, AddItem(position=position, item=one_best("f")))
    assert "".join(item.id for item in after.ahead) == order


def test_the_same_item_is_added_once_even_if_its_round_was_opened() -> None:
    room = ordered(gathered(), AddItem(position=0, item=one_best("fresh")))
    again = AddItem(position=1, item=one_best("fresh"))
    assert ordered(room, again) == room
    opened = ordered(room, OpenRound(round=1))
    assert ordered(opened, again) == opened


def test_a_review_holds_no_more_items_than_a_blueprint_may_ask_for() -> None:
    room = prepared(*(one_best(f"item-{number}") for number in range(MOST_ROUNDS)))
    assert code_of(room, AddItem(position=0, item=typed())) == "too_many_items"


def test_a_finished_review_takes_no_more() -> None:
    room = ordered(gathered(), EndReview())
    assert code_of(room, AddItem(position=0, item=one_best("fresh"))) == "finished"
