"""More time for a single player in real browsers: given on the desk or by a link, seen by nobody else."""

from playwright.sync_api import expect

from tests.browser.barriers import barriers, too_wide
from tests.browser.conftest import LayOut
from tests.browser.dealt import review_with
from tests.browser.screens import LAPTOP, NARROW_PHONE, PHONE, Screens

SECONDS = 40
HELD = "Round closed. The result comes when your host shows it."


def test_a_player_with_more_time_answers_after_the_deadline_and_nobody_else_can_tell(
    screens: Screens, lay_out: LayOut, host_cookie: str, axe_source: str
) -> None:
    room = lay_out(**review_with(("one_best",), rounds=1), seconds=SECONDS)
    ada = screens.seat(room.door_code, "Ada", **NARROW_PHONE)
    bo = screens.seat(room.door_code, "Bo", **PHONE)
    wall = screens.wall(room.door_code, **LAPTOP)
    desk = screens.desk(host_cookie, room.desk["room"])
    desk.page.get_by_role("button", name="Ada").click()
    desk.page.get_by_role("radio", name="twice as long").check()
    expect(desk.page.get_by_text("results are held from now on")).to_be_visible()
    assert barriers(desk.page, axe_source) == []
    desk.page.get_by_role("button", name="Change").click()
    expect(desk.page.get_by_role("button", name="Ada")).to_contain_text("2 ×")
    expect(desk.page.get_by_role("checkbox", name="results held until shown")).to_be_checked()
    expect(ada.page.get_by_text("You have twice the time for each round")).to_be_visible()
    before = len(bo.watch.frames), len(wall.watch.frames)

    item = desk.open_round(1)
    bo.answer(item, right=True)
    desk.go_on("Close the round")
    expect(bo.page.get_by_text(HELD)).to_be_visible()
    expect(wall.page.get_by_text(HELD)).to_be_visible()
    expect(ada.page.get_by_text("Closed for the others.")).to_be_visible()
    assert barriers(ada.page, axe_source) + too_wide(ada.page) == []
    expect(desk.page.get_by_text("1 may still answer")).to_be_visible()
    desk.page.keyboard.press("n")
    expect(desk.page.get_by_role("heading", name="Somebody still has time")).to_be_visible()
    assert barriers(desk.page, axe_source) == []
    desk.page.get_by_role("button", name="Wait").click()
    ada.page.reload()
    ada.answer(item, right=True)
    expect(desk.page.get_by_text("1 may still answer")).to_have_count(0)
    told = "".join(bo.watch.frames[before[0] :] + wall.watch.frames[before[1] :])
    assert '"answered":null' in told
    assert '"factor_percent":200' not in told
    desk.go_on("Show the result")
    expect(ada.page.get_by_text("right").first).to_be_visible()
    expect(wall.page.get_by_text("2 of 2 answered")).to_be_visible()


def test_a_private_link_serves_one_player(screens: Screens, lay_out: LayOut, host_cookie: str) -> None:
    room = lay_out(**review_with(("one_best",), rounds=1), seconds=60)
    desk = screens.desk(host_cookie, room.desk["room"])
    desk.page.get_by_role("button", name="Private link for more time").click()
    desk.page.get_by_role("button", name="Make the link").click()
    link = desk.page.get_by_label("The link; it is shown only now").input_value()
    desk.page.get_by_role("button", name="Done").click()
    ada = screens.seat(room.door_code, "Ada", **PHONE)
    secret = link.rpartition("#")[2]
    ada.is_in()
    ada.page.goto(f"{ada.page.url}#{secret}")
    expect(ada.page.get_by_text("You have 1.5 times the time for each round")).to_be_visible()
    assert "#" not in ada.page.url
    expect(desk.page.get_by_role("button", name="Ada")).to_contain_text("1.5 ×")
    bo = screens.seat(room.door_code, "Bo", **PHONE)
    bo.is_in()
    bo.page.goto(f"{bo.page.url}#{secret}")
    expect(bo.page.locator(".complaint")).to_contain_text("unknown or used up")
    bo.is_in()
    room.step("open_round", number=1)
    expect(ada.page.get_by_role("timer")).to_contain_text("1:2")
    expect(bo.page.get_by_role("timer")).to_contain_text("5")
    room.step("pause_round", number=1)
    expect(ada.page.get_by_role("timer")).to_contain_text("paused")
    expect(ada.page.get_by_role("timer")).to_contain_text("1:")
