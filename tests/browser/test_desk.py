"""The host's desk: laying out, previewing, running a round, mending what goes wrong."""

import pytest
from playwright.sync_api import Page, expect

from quizroom.cli.desk_link import new_desk_key
from quizroom.rehearsal.host import Host
from quizroom.settings import Settings
from tests.browser.conftest import LayOut
from tests.browser.dealt import review_with
from tests.browser.desk_screen import DeskScreen
from tests.browser.screens import Screens
from tests.browser.seat_screen import SeatScreen
from tests.serving import Server

MOST_TABS = 60
FOCUSED = """() => document.activeElement === document.body ? "nothing" :
  (document.activeElement.labels?.[0] ?? document.activeElement).innerText ?? ''"""


@pytest.fixture
def room(lay_out: LayOut) -> Host:
    """A review of three rounds with its door open; the first item has options."""
    return lay_out(**review_with(["one_best"], rounds=3))


@pytest.fixture
def desk(screens: Screens, room: Host, host_cookie: str) -> DeskScreen:
    """The desk with that review on it."""
    desk = screens.desk(host_cookie, room.desk["room"])
    desk.shows(room.door_code)
    return desk


@pytest.fixture
def seat(screens: Screens, room: Host) -> SeatScreen:
    """A player in that room."""
    seat = screens.seat(room.door_code, "Wren Ulna")
    seat.is_in()
    return seat


def tab_to(page: Page, name: str) -> None:
    """Go on with Tab until the thing with this text has the focus."""
    for _ in range(MOST_TABS):
        if name in page.evaluate(FOCUSED):
            return
        page.keyboard.press("Tab")
    raise AssertionError(f"{name!r} cannot be reached with Tab")


def test_a_review_is_laid_out_and_run_by_keyboard_alone(screens: Screens, host_cookie: str) -> None:
    desk = screens.desk(host_cookie)
    page = desk.page
    desk.shows("Course list")
    tab_to(page, "Title, shown on the wall")
    page.keyboard.type("Keys only")
    tab_to(page, "Rounds")
    page.keyboard.press("ControlOrMeta+a")
    page.keyboard.type("2")
    tab_to(page, "Deal the items")
    page.keyboard.press("Enter")
    desk.shows("Keys only")
    desk.shows("2 items dealt")
    desk.go_on("Open the door")
    door_code = desk.watch.view("desk")["public"]["door_code"]
    seat = screens.seat(door_code, "Wren Ulna")
    seat.is_in()
    for number in (1, 2):
        item = desk.open_round(number)
        seat.sees_round(number, 2)
        seat.answer(item, right=True, by="tap")
        desk.shows("1 of 1 answered")
        desk.go_on("Close the round")
        desk.go_on("Show the record")
    expect(desk.next_step).to_contain_text("End the review")
    page.keyboard.press("n")
    expect(page.get_by_role("dialog")).to_contain_text("It cannot be opened again.")
    tab_to(page, "End it")
    page.keyboard.press("Enter")
    seat.shows("The review is finished")
    desk.shows("The review is finished.")


def test_a_reload_brings_the_same_review_back(desk: DeskScreen, room: Host) -> None:
    desk.open_round(1)
    desk.page.reload()
    desk.shows(room.door_code)
    expect(desk.next_step).to_contain_text("Close the round")


def test_a_review_is_found_again_in_the_list(screens: Screens, host_cookie: str, lay_out: LayOut) -> None:
    room = lay_out(title="Tuesday Table, forearm")
    desk = screens.desk(host_cookie)
    desk.page.locator(".reviews_open", has_text="Tuesday Table, forearm").click()
    desk.shows(room.door_code)


def test_a_plan_that_yields_no_review_is_refused_in_a_sentence(screens: Screens, host_cookie: str) -> None:
    desk = screens.desk(host_cookie)
    desk.page.get_by_label("Title, shown on the wall").fill("Too much")
    desk.page.get_by_role("group", name="Course list").get_by_text("Upper limb, introduction").click()
    desk.page.get_by_label("Rounds").fill("60")
    for box in desk.page.get_by_role("group", name="Families of items").get_by_role("checkbox").all()[1:]:
        box.uncheck()
    desk.page.get_by_role("button", name="Deal the items").click()
    desk.shows("These settings do not yield enough items.")


def test_an_item_ahead_is_swapped_and_dropped(desk: DeskScreen) -> None:
    items = (
        desk.page.get_by_role("navigation", name="Items of this review")
        .get_by_role("listitem")
        .get_by_role("button")
    )
    expect(items).to_have_count(3)
    before = items.all_inner_texts()
    items.nth(1).click()
    desk.page.get_by_role("button", name="Swap").click()
    expect(items.nth(1)).not_to_have_text(before[1], use_inner_text=True)
    assert [items.nth(0).inner_text(), items.nth(2).inner_text()] == [before[0], before[2]]
    items.nth(2).click()
    desk.page.get_by_role("button", name="Drop").click()
    expect(items).to_have_count(2)
    assert items.nth(0).inner_text() == before[0]


def test_the_clock_stands_runs_on_and_gets_more_time(desk: DeskScreen, seat: SeatScreen) -> None:
    desk.open_round(1)
    desk.press("Pause the clock")
    seat.shows("paused")
    seat.says("The clock is paused.")
    standing = seat.page.get_by_role("timer").inner_text()
    seat.page.wait_for_timeout(1500)
    assert seat.page.get_by_role("timer").inner_text() == standing
    desk.press("Let the clock run")
    seat.says("The clock runs again.")
    limit_ms = seat.watch.view("public")["clock"]["limit_ms"]
    desk.press("+ 15 s")
    seat.says("15 seconds added.")
    assert seat.watch.view("public")["clock"]["limit_ms"] == limit_ms + 15_000


def test_a_struck_item_counts_for_nobody_until_it_is_let_count_again(
    desk: DeskScreen, seat: SeatScreen
) -> None:
    item = desk.open_round(1)
    seat.answer(item, right=False)
    desk.go_on("Close the round")
    seat.shows("wrong · 0 marks")
    desk.press("Strike this item")
    seat.shows("The host has taken this item out of all marks.")
    seat.says("This item is struck.")
    desk.press("Let it count again")
    seat.shows("wrong · 0 marks")


def test_the_host_alone_sees_the_distribution_before_closing(
    screens: Screens, desk: DeskScreen, seat: SeatScreen, room: Host
) -> None:
    wall = screens.wall(room.door_code)
    item = desk.open_round(1)
    seat.answer(item, right=True)
    desk.shows("1 of 1 answered")
    desk.shows("100 %")
    wall.shows("1 of 1 answered")
    wall.hides("100 %")
    desk.go_on("Close the round")
    wall.shows("100 %")


def test_a_player_is_renamed_and_sent_out(desk: DeskScreen, seat: SeatScreen) -> None:
    roster = desk.page.get_by_role("complementary", name="Roster")
    roster.get_by_role("button", name="Wren Ulna").click()
    desk.page.get_by_label("Another handle").fill("Egret Ethmoid")
    desk.page.get_by_role("button", name="Change", exact=True).click()
    seat.shows("Egret Ethmoid")
    roster.get_by_role("button", name="Egret Ethmoid").click()
    desk.page.get_by_role("button", name="Send out of the room").click()
    seat.shows("You are not in this room any more")
    desk.shows("Nobody is here yet.")


def test_standings_are_on_the_wall_only_while_the_host_wants_them(
    screens: Screens, desk: DeskScreen, seat: SeatScreen, room: Host
) -> None:
    wall = screens.wall(room.door_code)
    item = desk.open_round(1)
    seat.answer(item, right=True)
    desk.go_on("Close the round")
    wall.hides("Wren Ulna")
    desk.page.get_by_label("standings on the wall").check()
    wall.shows("Wren Ulna")
    desk.page.get_by_label("standings on the wall").uncheck()
    wall.hides("Wren Ulna")
    assert desk.handles() == ["Wren Ulna"]


def test_the_host_rules_on_typed_words_for_everybody_who_wrote_them(
    screens: Screens, lay_out: LayOut, host_cookie: str
) -> None:
    room = lay_out(**review_with(["typed"], rounds=1))
    desk = screens.desk(host_cookie, room.desk["room"])
    seats = [screens.seat(room.door_code, handle) for handle in ("Wren Ulna", "Teal Talus")]
    item = desk.open_round(1)
    for seat in seats:
        seat.answer(item, right=False)
    desk.go_on("Close the round")
    for seat in seats:
        seat.shows("wrong · 0 marks")
    desk.page.get_by_role("button", name="Accept").click()
    for seat in seats:
        seat.shows("right · 1 mark")
    desk.page.get_by_role("button", name="Refuse").first.click()
    for seat in seats:
        seat.shows("wrong · 0 marks")


def test_a_one_time_link_with_the_name_of_a_review_leads_straight_to_it(
    screens: Screens, server: Server, room: Host
) -> None:
    key = new_desk_key(Settings(data=server.data).database_url)
    page, watch = screens.page()
    page.goto(f"{screens.origin}/desk/enter/{key}#{room.desk['room']}")
    DeskScreen(page, watch).shows(room.door_code)
    assert key not in page.url
