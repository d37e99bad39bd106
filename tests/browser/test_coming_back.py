"""Phones sleep, networks drop, servers are killed: everybody is back in place, and nothing is lost."""

import pytest
from playwright.sync_api import expect

from quizroom.rehearsal.host import Host
from tests.browser.conftest import LayOut
from tests.browser.dealt import review_with
from tests.browser.screens import Screens
from tests.browser.seat_screen import SeatScreen

ROUNDS = 2


@pytest.fixture
def room(lay_out: LayOut) -> Host:
    """A review whose first round is open for 45 s or more, with options."""
    return lay_out(**review_with(["one_best"], rounds=ROUNDS))


def open_first(room: Host, *seats: SeatScreen) -> dict[str, object]:
    room.step("open_round", number=1)
    for seat in seats:
        seat.sees_round(1, ROUNDS)
    item: dict[str, object] = room.desk["items"][0]
    return item


def test_a_reload_changes_nothing(screens: Screens, room: Host) -> None:
    seat = screens.seat(room.door_code, "Wren Ulna")
    item = open_first(room, seat)
    seat.answer(item, right=True)
    seat.page.reload()
    seat.is_received()
    room.step("close_round", number=1)
    seat.shows("right · 1 mark")


def test_a_choice_not_handed_in_outlives_a_reload(screens: Screens, room: Host) -> None:
    seat = screens.seat(room.door_code, "Wren Ulna")
    item = open_first(room, seat)
    seat.choose(item, right=True)
    seat.page.reload()
    seat.shows("Not handed in yet.")
    seat.hand_in()
    seat.is_received()


def test_an_answer_given_without_network_is_kept_and_goes_out_by_itself(screens: Screens, room: Host) -> None:
    seat = screens.seat(room.door_code, "Wren Ulna")
    item = open_first(room, seat)
    with screens.network_may_fail():
        seat.page.context.set_offline(True)
        seat.choose(item, right=True)
        seat.hand_in()
        seat.shows("your answer is kept and goes out by itself")
        assert seat.watch.page.locator(".hand_in").inner_text().count("Answer received") == 0
        seat.page.context.set_offline(False)
        seat.is_received()
    room.step("close_round", number=1)
    seat.shows("right · 1 mark")


def test_a_locked_phone_wakes_up_in_the_round_that_is_on(screens: Screens, room: Host) -> None:
    seat = screens.seat(room.door_code, "Wren Ulna")
    item = open_first(room, seat)
    seat.answer(item, right=True)
    lock = seat.page.context.new_cdp_session(seat.page)
    lock.send("Page.setWebLifecycleState", {"state": "frozen"})
    room.step("close_round", number=1)
    room.step("show_record", number=1)
    room.step("open_round", number=2)
    lock.send("Page.setWebLifecycleState", {"state": "active"})
    seat.sees_round(2, ROUNDS)
    seat.answer(room.desk["items"][1], right=True)


def test_who_joins_late_enters_at_the_round_that_is_on_and_is_counted_from_there(
    screens: Screens, room: Host
) -> None:
    seat = screens.seat(room.door_code, "Wren Ulna")
    item = open_first(room, seat)
    seat.answer(item, right=True)
    room.step("close_round", number=1)
    room.step("open_round", number=2)
    late = screens.seat(room.door_code, "Lapwing Lunate")
    late.sees_round(2, ROUNDS)
    late.shows("You joined at round 2; your marks count from here.")
    late.answer(room.desk["items"][1], right=True)
    room.step("end_review", number=2)
    late.shows("1 of 1 mark")
    seat.shows("1 of 2 marks")


def test_the_seat_is_kept_on_a_second_tab(screens: Screens, room: Host) -> None:
    seat = screens.seat(room.door_code, "Wren Ulna")
    item = open_first(room, seat)
    seat.answer(item, right=True)
    second = seat.page.context.new_page()
    second.goto(seat.page.url)
    expect(second.locator(".hand_in")).to_contain_text("Answer received")
    assert room.desk["public"]["players"] == 1
