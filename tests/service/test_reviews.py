"""Laying out reviews from the real content."""

from dataclasses import replace

import pytest

from quizroom.questions.blueprint import Blueprint, Cell
from quizroom.questions.deck import CannotDeal
from quizroom.room.refusals import Refused
from quizroom.room.state import Plan
from quizroom.service.reviews import (
    UnknownCourse,
)
from tests.service.courses import plan_of
from tests.service.dealing import reviews
from tests.service.fakes import Desk


def test_a_review_is_dealt_by_its_plan_and_belongs_to_its_host() -> None:
    desk = Desk()
    room = reviews(desk).prepare(plan_of(rounds=6), host="owner", order="m1")
    assert (len(room.ahead), room.phase, room.host) == (6, "preparing", "owner")
    assert desk.log.rooms_of_host("owner") == (room.id,)


def test_the_same_order_again_finds_the_room_that_it_laid_out() -> None:
    desk = Desk()
    first = reviews(desk).prepare(plan_of(), host="owner", order="m1")
    again = reviews(Desk(desk.log)).prepare(replace(plan_of(), seed=99), host="owner", order="m1")
    assert again == first
    assert reviews(desk).prepare(plan_of(), host="owner", order="m2").id != first.id
    assert reviews(desk).prepare(plan_of(), host="another", order="m1").id != first.id


def test_the_same_seed_deals_the_same_items() -> None:
    one, other = (reviews(Desk()).prepare(plan_of(), host="owner", order="m").ahead for _ in range(2))
    assert one == other


@pytest.mark.parametrize(
    "plan,problem",
    [
        (replace(plan_of(), course="no-such-course"), UnknownCourse),
        (replace(plan_of(), families=()), CannotDeal),
        (plan_of(rounds=1000), CannotDeal),
    ],
)
def test_what_cannot_be_dealt_lays_out_nothing(plan: Plan, problem: type[Exception]) -> None:
    desk = Desk()
    with pytest.raises(problem):
        reviews(desk).prepare(plan, host="owner", order="m1")
    assert desk.log.rooms_of_host("owner") == ()


def test_a_swap_puts_a_fresh_item_in_the_place_and_its_repeat_changes_nothing() -> None:
    desk = Desk()
    room = reviews(desk).prepare(plan_of(), host="owner", order="m1")
    old = room.ahead[1].id
    swapped = reviews(desk).swap(room, position=1, instead_of=old)
    assert old not in {item.id for item in swapped.ahead}
    assert [swapped.ahead[0], *swapped.ahead[2:]] == [room.ahead[0], *room.ahead[2:]]
    assert reviews(desk).swap(swapped, position=1, instead_of=old) == swapped


def test_a_review_by_a_blueprint_keeps_to_its_grid_when_items_are_swapped() -> None:
    desk = Desk()
    cells = (
        Cell(region="forearm", family="action", rounds=2),
        Cell(region="arm", family="prime_mover", rounds=1),
    )
    plan = replace(plan_of(rounds=4), blueprint=Blueprint(cells=cells, warm_up=1))
    room = reviews(desk).prepare(plan, host="owner", order="m1")
    swapped = reviews(desk).swap(room, position=2, instead_of=room.ahead[2].id)
    for items in (room.ahead, swapped.ahead):
        assert [item.warm_up for item in items] == [True, False, False, False]
        assert sorted(item.family for item in items[1:]) == ["action", "action", "prime_mover"]
    again = reviews(Desk(desk.log)).prepare(plan, host="owner", order="m1")
    assert again == swapped


@pytest.mark.parametrize("position", [1, 99])
def test_an_item_in_another_place_is_not_swapped(position: int) -> None:
    desk = Desk()
    room = reviews(desk).prepare(plan_of(), host="owner", order="m1")
    with pytest.raises(Refused, match="no_such_item"):
        reviews(desk).swap(room, position=position, instead_of=room.ahead[0].id)
