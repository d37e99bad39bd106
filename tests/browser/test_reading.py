"""Read on any screen, used with any reader, heard without looking, still where stillness is asked for."""

import pytest
from playwright.sync_api import expect

from quizroom.questions.model import Format
from tests.browser.barriers import barriers, moving, too_wide
from tests.browser.conftest import LayOut
from tests.browser.dealt import review_with
from tests.browser.phases import phases_of_one_round
from tests.browser.screens import LAPTOP, NARROW_PHONE, PHONE, PROJECTOR, Device, Screens

FORMATS: tuple[Format, ...] = ("one_best", "pick_n", "typed", "free_list", "ordering", "matching")
NARROW: Device = {"viewport": {"width": 320, "height": 640}}
TALLER_THAN_THE_SCREEN = (
    "() => document.documentElement.scrollHeight > document.documentElement.clientHeight + 1"
)


@pytest.mark.parametrize("format_", FORMATS)
def test_axe_finds_no_barrier_in_any_phase_and_wall_and_desk_need_no_scrolling(
    format_: Format, screens: Screens, lay_out: LayOut, host_cookie: str, axe_source: str
) -> None:
    room = lay_out(**review_with([format_], rounds=1))
    assert room.desk["items"][0]["format"] == format_
    seat = screens.seat(room.door_code, "Wren Ulna")
    wall = screens.wall(room.door_code, **PROJECTOR)
    desk = screens.desk(host_cookie, room.desk["room"], **LAPTOP)
    for phase in phases_of_one_round(room, seat, wall):
        for name, screen in {"wall": wall, "desk": desk}.items():
            assert not screen.page.evaluate(TALLER_THAN_THE_SCREEN), f"{name}, {phase}"
        for name, screen in {"seat": seat, "wall": wall, "desk": desk}.items():
            assert barriers(screen.page, axe_source) == [], f"{name}, {phase}"


def test_axe_finds_no_barrier_before_anybody_is_in(
    screens: Screens, host_cookie: str, axe_source: str
) -> None:
    front, _ = screens.page(**PHONE)
    front.goto(screens.origin)
    expect(front.get_by_role("button", name="Take a seat")).to_be_visible()
    door, _ = screens.page(**PHONE)
    door.goto(f"{screens.origin}/seat/CDFHJ")
    expect(door.get_by_role("button", name="Take a seat")).to_be_visible()
    start = screens.desk(host_cookie)
    start.shows("Course list")
    nowhere = screens.wall("CDFHJ")
    nowhere.shows("No open room has this door code.")
    for page in (front, door, start.page, nowhere.page):
        assert barriers(page, axe_source) == [], page.url


def test_axe_finds_what_it_should(screens: Screens, axe_source: str) -> None:
    page, _ = screens.page(**PHONE)
    page.goto(screens.origin)
    page.get_by_role("button", name="Take a seat").evaluate("(button) => { button.textContent = ''; }")
    assert any("button-name" in line for line in barriers(page, axe_source))


@pytest.mark.parametrize(
    "scheme,colour", [("light", "light-dark(#fff, #fff)"), ("dark", "light-dark(#000, #000)")]
)
def test_axe_finds_words_that_one_scheme_alone_hides(
    scheme: str, colour: str, screens: Screens, axe_source: str
) -> None:
    page, _ = screens.page(**PHONE)
    page.goto(screens.origin)
    page.locator("h1").evaluate("(heading, colour) => { heading.style.color = colour; }", colour)
    found = barriers(page, axe_source)
    assert [line.split(":")[:2] for line in found] == [[scheme, " color-contrast"]]


@pytest.mark.parametrize("format_", FORMATS)
def test_nothing_is_cut_off_at_320_pixels_in_any_phase(
    format_: Format, screens: Screens, lay_out: LayOut
) -> None:
    room = lay_out(**review_with([format_], rounds=1))
    seat = screens.seat(room.door_code, "W" * 40, **NARROW_PHONE)
    wall = screens.wall(room.door_code, **NARROW)
    for phase in phases_of_one_round(room, seat, wall):
        assert too_wide(seat.page) == [], phase
        assert too_wide(wall.page) == [], phase


def test_nothing_moves_where_less_motion_is_asked_for(screens: Screens, lay_out: LayOut) -> None:
    room = lay_out(**review_with(["one_best"], rounds=1))
    still = screens.seat(room.door_code, "Wren Ulna", reduced_motion="reduce")
    lively = screens.wall(room.door_code, reduced_motion="no-preference")
    moved: list[str] = []
    for _ in phases_of_one_round(room, still, lively):
        assert moving(still.page) == []
        moved += moving(lively.page)
    assert moved, "bars grow where motion is welcome"


def test_the_review_can_be_followed_by_ear(screens: Screens, lay_out: LayOut) -> None:
    room = lay_out(**review_with(["one_best"], rounds=1), seconds=14)
    seat = screens.seat(room.door_code, "Wren Ulna")
    for text in (
        "The door is open.",
        "Round 1 of 1 is open. You have 14 seconds.",
        "Answer received",
        "10 seconds left",
        "Round 1 is closed. Your answer is right: 1 mark.",
        "The record is shown.",
        "The review is finished. You have 1 of 1 mark.",
    ):
        if text.startswith("Round 1 of 1"):
            room.step("open_round", number=1)
        if text.startswith("Answer"):
            seat.answer(room.desk["items"][0], right=True)
        if text.startswith("The record"):
            room.step("show_record", number=1)
        if text.startswith("The review is finished"):
            room.step("end_review", number=1)
        seat.says(text)
    assert sum(text.startswith("Round 1 is closed.") for text in seat.watch.heard()) == 1, "said once"
