"""Stations on real pages: benches start at different items, move on at the bell, and see results after."""

from typing import Any

from playwright.sync_api import expect

from tests.browser.barriers import barriers, too_wide
from tests.browser.desk_screen import DeskScreen
from tests.browser.screen import Screen
from tests.browser.screens import NARROW_PHONE, PHONE, Screens
from tests.browser.seat_screen import SeatScreen
from tests.browser.test_benches import take_bench

ITEMS = 2


def station_desk(screens: Screens, host_cookie: str) -> tuple[DeskScreen, str]:
    """A desk with two items for benches that start at different ones, its door open."""
    desk = screens.desk(host_cookie)
    page = desk.page
    page.get_by_label("Rounds").fill(str(ITEMS))
    page.get_by_label("some answers are typed").uncheck()
    page.get_by_label("standings on the wall").check()
    page.get_by_label("no limit").check()
    page.get_by_label("taken by name").check()
    page.get_by_label("first alone, then one answer").uncheck()
    page.get_by_label("benches may start at different items").check()
    page.get_by_role("button", name="Deal the items").click()
    desk.go_on("Open the door")
    return desk, page.locator(".console_code").inner_text()


def answers_right(seat: SeatScreen, item: dict[str, Any]) -> None:
    seat.shows(item["stem"])
    seat.answer(item, right=True)


def test_benches_start_apart_move_on_at_the_bell_and_see_results_afterwards(
    screens: Screens, host_cookie: str, axe_source: str
) -> None:
    desk, door = station_desk(screens, host_cookie)
    ada, bo = screens.seat(door, "Ada", **NARROW_PHONE), screens.seat(door, "Bo", **PHONE)
    wall = screens.wall(door)
    take_bench(ada, "Carpals")
    take_bench(bo, "Tarsals")
    desk.shows("Tarsals has 1 player")
    desk.go_on(f"Open {ITEMS} stations")
    first, second = desk.item(1), desk.item(2)
    everybody: tuple[Screen, ...] = (ada, bo, wall)
    for screen in everybody:
        screen.shows(f"turn 1 of {ITEMS}")
    answers_right(ada, first)
    answers_right(bo, second)
    wall.shows("2 of 2 answered")
    wall.hides(first["stem"])
    for screen in (*everybody, desk):
        assert barriers(screen.page, axe_source) + too_wide(screen.page) == []
    desk.go_on("Ring: all move on")
    ada.says(f"Turn 2 of {ITEMS}. You are at station 2.")
    answers_right(ada, second)
    bo.shows(first["stem"])
    desk.go_on("Ring: the last turn ends")
    for screen in everybody:
        screen.shows("All stations are done")
    late = screens.seat(door, "Late")
    late.shows("All stations are done")
    desk.go_on("Show item 1 with its result")
    ada.shows("right · 1 mark")
    bo.shows("no answer")
    wall.shows(first["stem"])
    desk.go_on("Show the record")
    desk.go_on("Show item 2 with its result")
    bo.shows("right · 1 mark")
    expect(wall.page.locator(".standings_row").first).to_contain_text("Carpals")
    assert barriers(wall.page, axe_source) + too_wide(wall.page) == []
