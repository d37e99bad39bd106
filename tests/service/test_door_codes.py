"""Door codes."""

import pytest

from quizroom.service.reviews import (
    DOOR_LENGTH,
    DOOR_LETTERS,
    NoDoorFree,
    door_code_of,
    tidy_door_code,
)
from tests.service.courses import plan_of
from tests.service.dealing import reviews
from tests.service.fakes import Desk


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
