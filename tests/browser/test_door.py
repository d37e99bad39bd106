"""The way in: every mistake is answered in a sentence, and nothing is lost by it."""

import pytest
from playwright.sync_api import expect

from quizroom.room.handles import LONGEST_HANDLE
from tests.browser.conftest import LayOut
from tests.browser.screens import PHONE, Screens
from tests.browser.seat_screen import SeatScreen


@pytest.fixture
def front(screens: Screens) -> SeatScreen:
    """Somebody with a phone on the front page."""
    seat = SeatScreen(*screens.page(**PHONE))
    seat.page.goto(screens.origin)
    return seat


def write(seat: SeatScreen, door_code: str, handle: str) -> None:
    seat.page.get_by_label("Door code").fill(door_code)
    seat.enter(handle)


def test_a_door_code_may_be_typed_small_and_with_spaces(front: SeatScreen, lay_out: LayOut) -> None:
    code = lay_out().door_code.lower()
    write(front, f"{code[:2]} {code[2:]}", "Wren Ulna")
    front.is_in()
    front.shows("Wren Ulna")


def test_a_wrong_door_code_is_answered_and_can_be_mended(front: SeatScreen, lay_out: LayOut) -> None:
    code = lay_out().door_code
    write(front, "CCCCC" if code != "CCCCC" else "DDDDD", "Wren Ulna")
    front.shows("No open room has this door code. Check the five letters on the wall.")
    front.says("No open room has this door code.")
    write(front, code, "Wren Ulna")
    front.is_in()


def test_nothing_typed_is_answered_without_asking_the_server(front: SeatScreen) -> None:
    front.page.get_by_role("button", name="Take a seat").click()
    front.shows("The door code is missing")
    front.page.get_by_label("Door code").fill("CDFHJ")
    front.page.get_by_role("button", name="Take a seat").click()
    front.shows("The handle is missing")


def test_a_handle_without_letter_or_figure_is_refused_in_a_sentence(
    front: SeatScreen, lay_out: LayOut
) -> None:
    write(front, lay_out().door_code, "!!! ???")
    front.shows("Please choose a handle of 1 to 40 characters with at least one letter or figure.")


def test_a_handle_that_somebody_has_is_refused_and_another_is_taken(
    screens: Screens, lay_out: LayOut
) -> None:
    room = lay_out()
    screens.seat(room.door_code, "Teal Talus").is_in()
    second = screens.seat(room.door_code, "teal talus")
    second.shows("Somebody in this room already has that handle. Add a word or a figure to yours.")
    second.enter("Teal Talus 2")
    second.is_in()


@pytest.mark.parametrize(
    "handle", ["鷺 尺骨", "عصفور الزند", "O'Dock", "<b>Müller</b>", "W" * LONGEST_HANDLE]
)
def test_any_honest_handle_is_taken_as_it_stands(handle: str, screens: Screens, lay_out: LayOut) -> None:
    seat = screens.seat(lay_out().door_code, handle)
    seat.is_in()
    expect(seat.page.get_by_text(handle, exact=True)).to_be_visible()


def test_a_finished_review_lets_nobody_in(screens: Screens, lay_out: LayOut) -> None:
    room = lay_out()
    room.step("end_review", number=0)
    late = screens.seat(room.door_code, "Wren Ulna")
    late.shows("This review is finished.")


def test_a_wall_of_an_unknown_room_says_so(screens: Screens) -> None:
    screens.wall("CDFHJ").shows("No open room has this door code.")


def test_the_desk_is_closed_to_whoever_has_no_key(screens: Screens) -> None:
    page, watch = screens.page()
    answer = page.goto(f"{screens.origin}/desk")
    assert answer is not None
    assert answer.status == 403
    expect(page.locator("body")).to_contain_text("The desk is closed")
    watch.complaints.clear()  # the browser counts the refusal itself among the errors
