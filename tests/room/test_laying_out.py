"""A review as laid out: its first event, its items ahead, its door, its standings."""

from dataclasses import replace

import pytest

from quizroom.room.commands import DropItem, EndReview, OpenDoor, OpenRound, ShowStandings, SwapItem
from quizroom.room.events import RoundOpened
from quizroom.room.folding import replay
from quizroom.room.laying_out import prepare
from quizroom.room.refusals import Refused
from quizroom.room.rules import decide
from tests.room.refusing import code_of
from tests.room.sample_items import one_best, pick_three, typed
from tests.room.samples import NOON, answering, gathered, ordered, plan, preparation, prepared

FRESH = one_best("fresh")
SWAP = SwapItem(position=1, instead_of="typed", item=FRESH)


def test_a_new_room_has_its_items_ahead_and_its_door_shut() -> None:
    room = prepared(one_best(), typed(), by=plan(standings=True))
    assert (room.phase, room.version, room.door_code) == ("preparing", 1, "")
    assert [item.id for item in room.ahead] == ["one-best", "typed"]
    assert room.standings


def test_a_review_without_items_is_not_laid_out() -> None:
    with pytest.raises(Refused, match="no_items_left"):
        prepare("room-1", replace(preparation(), items=()), NOON)


def test_a_room_is_laid_out_once() -> None:
    assert code_of(prepared(), preparation()) == "wrong_phase"


def test_an_empty_log_is_no_room_and_one_without_its_beginning_is_an_error() -> None:
    assert replay([]) is None
    with pytest.raises(TypeError, match="RoundOpened"):
        replay([RoundOpened(round=1, at=NOON, closes_at=None)])


def test_a_swap_puts_another_item_in_its_place() -> None:
    room = ordered(prepared(one_best(), typed(), pick_three()), SWAP)
    assert [item.id for item in room.ahead] == ["one-best", "fresh", "pick-three"]
    assert decide(room, SWAP, NOON) == ()


def test_a_drop_moves_later_items_up_and_a_repeat_drops_no_second_one() -> None:
    drop = DropItem(position=0, item="one-best")
    room = ordered(prepared(one_best(), typed(), pick_three()), drop)
    assert [item.id for item in room.ahead] == ["typed", "pick-three"]
    assert decide(room, drop, NOON) == ()


@pytest.mark.parametrize("position", [0, 2, 9])
def test_an_item_that_has_moved_is_neither_swapped_nor_dropped(position: int) -> None:
    room = prepared(one_best(), typed(), pick_three())
    assert code_of(room, replace(SWAP, position=position)) == "no_such_item"
    assert code_of(room, DropItem(position=position, item="typed")) == "no_such_item"


def test_the_last_item_of_a_review_is_not_dropped() -> None:
    drop = DropItem(position=0, item="typed")
    assert code_of(prepared(typed()), drop) == "no_items_left"
    assert code_of(answering(one_best(), typed()), drop) is None


def test_an_opened_item_can_no_longer_be_swapped() -> None:
    room = answering(one_best(), typed())
    assert code_of(room, SwapItem(position=0, instead_of="one-best", item=FRESH)) == "no_such_item"


def test_the_door_gets_one_code() -> None:
    room = ordered(prepared(), OpenDoor(door_code="CDFHJ"))
    assert (room.phase, room.door_code) == ("gathering", "CDFHJ")
    assert decide(room, OpenDoor(door_code="KMNPR"), NOON) == ()


@pytest.mark.parametrize("order", [OpenDoor(door_code="KMNPR"), SWAP, DropItem(position=0, item="typed")])
def test_a_finished_review_stays_as_it_is(order: OpenDoor | SwapItem | DropItem) -> None:
    assert code_of(ordered(prepared(one_best(), typed()), EndReview()), order) == "finished"


def test_standings_may_be_turned_on_and_off_at_any_time() -> None:
    for room in (prepared(), answering(), ordered(gathered(), EndReview())):
        shown = ordered(room, ShowStandings(on=True))
        assert shown.standings
        assert decide(shown, ShowStandings(on=True), NOON) == ()
        assert not ordered(shown, ShowStandings(on=False)).standings


def test_items_ahead_may_be_swapped_while_a_round_is_open() -> None:
    room = ordered(answering(one_best(), pick_three(), typed()), SWAP)
    assert ordered(room, SwapItem(position=0, instead_of="pick-three", item=one_best("x"))).ahead[0].id == "x"
    assert code_of(room, OpenRound(round=2)) == "round_is_open"


def test_an_opened_item_is_not_dropped_and_not_taken_for_dropped_either() -> None:
    assert code_of(answering(one_best(), typed()), DropItem(position=0, item="one-best")) == "no_such_item"
