"""Laying out reviews from the real content."""

from dataclasses import replace

import pytest

from quizroom.questions.deck import CannotDeal
from quizroom.room.refusals import Refused
from quizroom.room.state import Plan
from quizroom.service.reviews import (
    DOOR_LENGTH,
    DOOR_LETTERS,
    NoDoorFree,
    Reviews,
    UnknownCourse,
    door_code_of,
    tidy_door_code,
)
from tests.service.courses import knowledge, plan_of
from tests.service.fakes import Desk


def reviews(desk: Desk, *seeds: int) -> Reviews:
    """Reviews whose random numbers are these, and then the last for ever."""
    left = list(seeds or (12345,))
    return Reviews(
        catalogue=knowledge(),
        rooms=desk.rooms,
        log=desk.log,
        new_seed=lambda: left.pop(0) if len(left) > 1 else left[0],
    )


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


@pytest.mark.parametrize("position", [1, 99])
def test_an_item_in_another_place_is_not_swapped(position: int) -> None:
    desk = Desk()
    room = reviews(desk).prepare(plan_of(), host="owner", order="m1")
    with pytest.raises(Refused, match="no_such_item"):
        reviews(desk).swap(room, position=position, instead_of=room.ahead[0].id)


def test_the_door_gets_a_code_that_no_other_room_has() -> None:
    desk = Desk()
    rooms = [reviews(desk).prepare(plan_of(), host="owner", order=order) for order in "ab"]
    first = reviews(desk, 7).open_door(rooms[0])
    second = reviews(desk, 7, 7, 8).open_door(rooms[1])
    assert (first.door_code, second.door_code) == (door_code_of(7), door_code_of(8))
    assert reviews(desk, 9).open_door(first).door_code == first.door_code


def test_when_no_code_is_free_the_host_is_told() -> None:
    desk = Desk()
    rooms = [reviews(desk).prepare(plan_of(), host="owner", order=order) for order in "ab"]
    reviews(desk, 7).open_door(rooms[0])
    with pytest.raises(NoDoorFree):
        reviews(desk, 7).open_door(rooms[1])


@pytest.mark.parametrize("number", [0, 1, 14, 15, 2**31 - 1])
def test_a_door_code_is_five_letters_that_nobody_misreads(number: int) -> None:
    code = door_code_of(number)
    assert len(code) == DOOR_LENGTH
    assert set(code) <= set(DOOR_LETTERS)
    assert not set(DOOR_LETTERS) & set("AEIOULBSZGQ0158")


@pytest.mark.parametrize("raw", ["cdfhj", " CDF HJ ", "cdf-hj", "C.D.F.H.J", "\tCDFHJ\n"])
def test_a_door_code_may_be_typed_as_people_do(raw: str) -> None:
    assert tidy_door_code(raw) == "CDFHJ"
