"""An ordering and a matching, played by hand: moved by buttons, matched by lists, closed and explained."""

from typing import Any

import pytest
from playwright.sync_api import Locator, expect

from quizroom.rehearsal.host import Host
from tests.browser.conftest import LayOut
from tests.browser.dealt import review_with
from tests.browser.screens import NARROW_PHONE, Screens
from tests.browser.seat_screen import By, SeatScreen, answer_letters

LEAST_TARGET = 44
"""CSS pixels; the size that WCAG 2.2, 2.5.5 asks for, since gloves are worn in the laboratory."""


def opened(room: Host) -> dict[str, Any]:
    """The only item, with its round open."""
    room.step("open_round", number=1)
    item: dict[str, Any] = room.desk["items"][0]
    return item


def is_large(target: Locator) -> bool:
    box = target.bounding_box()
    return box is not None and min(box["width"], box["height"]) >= LEAST_TARGET


@pytest.mark.parametrize("by", ["tap", "keys"])
def test_an_order_is_made_by_buttons_or_keys_and_comes_back_after_a_reload(
    by: By, screens: Screens, lay_out: LayOut
) -> None:
    room = lay_out(**review_with(["ordering"], rounds=1))
    seat = screens.seat(room.door_code, "Wren Ulna", **NARROW_PHONE)
    seat.is_in()
    item = opened(room)
    seat.sees_round(1, 1)
    seat.answer(item, right=True, by=by)
    wanted = answer_letters(item, right=True)
    assert seat.order() == wanted
    seat.says("is at place")
    seat.page.reload()
    seat.is_received()
    assert seat.order() == wanted
    room.step("close_round", number=1)
    seat.shows("1 mark")


def test_half_an_order_earns_part_of_the_mark_and_each_place_says_why(
    screens: Screens, lay_out: LayOut, host_cookie: str
) -> None:
    room = lay_out(**review_with(["ordering"], rounds=1))
    seat, wall = screens.seat(room.door_code, "Wren Ulna"), screens.wall(room.door_code)
    desk = screens.desk(host_cookie, room.desk["room"])
    item = opened(room)
    seat.sees_round(1, 1)
    right = answer_letters(item, right=True)
    swapped_rows = [item["rows"][1], item["rows"][0], *item["rows"][2:]]
    seat.answer({**item, "rows": swapped_rows}, right=True)
    desk.shows(f"instead: {right[1]} 1")
    room.step("close_round", number=1)
    for screen in (seat, wall):
        expect(screen.page.locator(".rows-places .row_letter")).to_have_text(right)
    seat.shows("part right")
    seat.shows(f"✕ you: {right[1]}")
    room.step("show_record", number=1)
    seat.shows(item["rows"][0]["reason"])


@pytest.mark.parametrize("by", ["tap", "keys"])
def test_rows_are_matched_one_by_one_and_each_is_marked(by: By, screens: Screens, lay_out: LayOut) -> None:
    room = lay_out(**review_with(["matching"], rounds=1))
    seat, wall = screens.seat(room.door_code, "Wren Ulna", **NARROW_PHONE), screens.wall(room.door_code)
    item = opened(room)
    seat.sees_round(1, 1)
    for row in item["rows"]:
        wall.shows(row["stem"])
        expect(seat.page.get_by_role("combobox", name=row["stem"])).to_be_visible()
    seat.choose(item, right=True, by=by)
    seat.page.get_by_role("combobox").first.select_option("")
    seat.hand_in()
    seat.is_received()
    room.step("close_round", number=1)
    seat.shows("part right")
    seat.shows("✕ you: no answer")
    wall.shows(item["key_text"][0])
    room.step("show_record", number=1)
    seat.shows(item["rows"][0]["reason"])


@pytest.mark.parametrize("format_", ["ordering", "matching"])
def test_every_target_is_large_enough_for_a_glove(format_: Any, screens: Screens, lay_out: LayOut) -> None:
    room = lay_out(**review_with([format_], rounds=1))
    seat: SeatScreen = screens.seat(room.door_code, "Wren Ulna", **NARROW_PHONE)
    opened(room)
    seat.sees_round(1, 1)
    targets = seat.page.locator(".order_move, select, .hand_in_button").all()
    assert len(targets) > 3
    assert all(is_large(target) for target in targets)
