"""Benches on real pages: taken at the seats, moved from the desk, one answer for each."""

from playwright.sync_api import expect

from quizroom.protocol.sentences import SENTENCES
from tests.browser import keys
from tests.browser.barriers import barriers, too_wide
from tests.browser.desk_screen import DeskScreen
from tests.browser.group_screen import come_in, door_code_of, items_of, open_group
from tests.browser.screens import NARROW_PHONE, PHONE, Screens
from tests.browser.seat_screen import SeatScreen, answer_letters
from tests.live.group import room_behind
from tests.serving import Server


def bench_desk(screens: Screens, host_cookie: str, how: str) -> tuple[DeskScreen, str]:
    """A desk with a review at benches, its door open."""
    desk = screens.desk(host_cookie)
    page = desk.page
    page.get_by_label("some answers are typed").uncheck()
    page.get_by_label("standings on the wall").check()
    page.get_by_label("no limit").check()
    page.get_by_label(how).check()
    page.get_by_role("button", name="Deal the items").click()
    desk.go_on("Open the door")
    return desk, page.locator(".console_code").inner_text()


def take_bench(seat: SeatScreen, bench: str) -> None:
    seat.page.get_by_label("Name of a bench").fill(bench)
    seat.page.get_by_role("button", name="Take it").click()
    seat.shows(f"Your bench: {bench}")


def test_a_bench_talks_after_its_members_have_answered_and_stands_together(
    screens: Screens, host_cookie: str, axe_source: str
) -> None:
    desk, door = bench_desk(screens, host_cookie, "taken by name")
    ada, bo, cem = (
        screens.seat(door, handle, **device)
        for handle, device in (("Ada", PHONE), ("Bo", NARROW_PHONE), ("Cem", PHONE))
    )
    wall = screens.wall(door)
    take_bench(ada, "Carpals")
    bo.page.get_by_role("button", name="Carpals (1)").click()
    bo.shows("Your bench: Carpals (2 players)")
    take_bench(cem, "Tarsals")
    desk.shows("Tarsals has 1 player; three to six talk best.")
    assert barriers(bo.page, axe_source) + too_wide(bo.page) == []
    item = desk.open_round(1)
    bo.shows("First by yourself")
    for seat, right in ((ada, False), (bo, True), (cem, False)):
        seat.choose(item, right=right)
        seat.hand_in()
        seat.shows("Talk, then one of you hands in for all.")
    ada.shows("2 of 2 have answered by themselves")
    assert barriers(bo.page, axe_source) + too_wide(bo.page) == []
    bo.page.get_by_role("button", name="Hand in for the bench").click()
    ada.shows(f"✓ Handed in for Carpals: {', '.join(answer_letters(item, right=True))}.")
    wall.shows("1 of 2 benches")
    expect(ada.page.get_by_role("button", name="Change my own answer")).to_have_count(0)
    desk.go_on("Close the round")
    ada.shows("Your bench, Carpals: 1 mark in this round, 1 of 1 so far")
    cem.shows("Your bench, Tarsals: 0 of 1 so far")
    wall.shows("Carpals")
    wall.hides("Bo")


def test_drawn_benches_are_drawn_on_the_desk_and_a_player_may_be_moved(
    screens: Screens, host_cookie: str
) -> None:
    desk, door = bench_desk(screens, host_cookie, "that are drawn")
    ada = screens.seat(door, "Ada")
    screens.seat(door, "Bo").is_in()
    ada.shows("Benches are drawn before the first round.")
    desk.page.get_by_role("button", name="Draw the benches").click()
    ada.shows("Your bench: Bench 1")
    roster = desk.page.get_by_role("complementary", name="Roster")
    roster.get_by_role("button", name="Ada").click()
    desk.page.get_by_label("Bench", exact=True).fill("Metatarsals")
    desk.page.get_by_role("button", name="Change", exact=True).click()
    ada.shows("Your bench: Metatarsals")


def test_a_bench_is_renamed_on_the_desk_for_everybody(screens: Screens, host_cookie: str) -> None:
    desk, door = bench_desk(screens, host_cookie, "taken by name")
    ada, bo = screens.seat(door, "Ada"), screens.seat(door, "Bo")
    take_bench(ada, "Carpals")
    take_bench(bo, "Tarsals")
    roster = desk.page.get_by_role("complementary", name="Roster")
    keys.press(desk.page, roster.get_by_text("2 benches"))
    keys.press(desk.page, roster.get_by_role("button", name="Rename Carpals"))
    name = roster.get_by_label("Another name for Carpals")
    for other in ("Tarsals", "Metacarpals"):
        expect(name).to_be_focused()
        desk.page.keyboard.press("Control+a")
        keys.write(desk.page, name, other)
        desk.page.keyboard.press("Enter")
        if other == "Tarsals":
            desk.shows(SENTENCES["bench_exists"])
    ada.shows("Your bench: Metacarpals")
    expect(roster.get_by_role("button", name="Rename Metacarpals")).to_be_visible()
    expect(roster.get_by_role("button", name="Rename Tarsals")).to_be_visible()
    keys.press(desk.page, roster.get_by_role("button", name="Ada"))
    expect(desk.page.get_by_label("Bench", exact=True)).to_have_value("Metacarpals")
    bo.shows("Your bench: Tarsals")


def test_a_group_without_a_host_plays_at_benches_to_the_end(screens: Screens, server: Server) -> None:
    ada = open_group(screens, handle="Ada", rounds=1, benches="taken by name")
    door = door_code_of(ada)
    bo = come_in(screens, door, "Bo")
    ada.shows("2 players here")
    take_bench(ada, "Carpals")
    take_bench(bo, "Tarsals")
    for seat in (ada, bo):
        seat.is_ready()
    item = items_of(room_behind(server, door))[0]
    for seat in (ada, bo):
        seat.choose(item, right=False)
        seat.hand_in()
        seat.shows("Talk, then one of you hands in for all.")
    ada.choose(item, right=True)
    for seat in (ada, bo):
        seat.page.get_by_role("button", name="Hand in for the bench").click()
    for seat in (ada, bo):
        seat.reads_record()
        seat.is_ready()
    ada.shows("Your bench, Carpals: 1 of 1 mark, place 1 among 2 benches")
    bo.shows("Tarsals (you)")
