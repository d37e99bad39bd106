"""Certainty 1, 2, 3 in real browsers: asked beside the answer, told to the player, and for the class."""

from playwright.sync_api import expect

from tests.browser.barriers import barriers, too_wide
from tests.browser.conftest import LayOut
from tests.browser.dealt import review_with
from tests.browser.screens import LAPTOP, NARROW_PHONE, PHONE, Screens
from tests.browser.seat_screen import SeatScreen


def say_how_certain(seat: SeatScreen, certainty: int) -> None:
    seat.page.get_by_role("radio", name=f"{certainty} right").check()


def test_who_is_certain_and_wrong_learns_of_it_and_the_host_of_the_class(
    screens: Screens, lay_out: LayOut, host_cookie: str, axe_source: str
) -> None:
    room = lay_out(**review_with(("one_best",), rounds=1), certainty=True)
    ada = screens.seat(room.door_code, "Ada", **NARROW_PHONE)
    bo = screens.seat(room.door_code, "Bo", **PHONE)
    desk = screens.desk(host_cookie, room.desk["room"])
    room.step("open_round", number=1)
    item = room.desk["items"][0]
    for seat, right, certainty in ((ada, False, 3), (bo, True, 2)):
        seat.choose(item, right=right)
        say_how_certain(seat, certainty)
        assert barriers(seat.page, axe_source) + too_wide(seat.page) == []
        seat.hand_in()
        expect(seat.page.locator(".hand_in")).to_contain_text(f"certainty {certainty}")
    room.step("close_round", number=1)
    expect(ada.page.get_by_text("certainty \u22126")).to_be_visible()
    expect(bo.page.get_by_text("certainty 2")).to_be_visible()
    desk.page.get_by_text("Certainty of the class").click()
    rows = desk.page.locator(".sureness tbody tr")
    expect(rows).to_contain_text(["1", "2", "3"])
    expect(rows.nth(1)).to_contain_text("1 (100 %)")
    expect(rows.nth(2)).to_contain_text("0 (0 %)")
    assert barriers(desk.page, axe_source) == []
    room.step("end_review", number=1)
    expect(ada.page.get_by_role("heading", name="Your certainty: \u22126 in 1 answer")).to_be_visible()
    assert barriers(ada.page, axe_source) + too_wide(ada.page) == []


def test_it_is_not_asked_where_the_host_did_not_choose_so(screens: Screens, lay_out: LayOut) -> None:
    room = lay_out(**review_with(("one_best",), rounds=1))
    ada = screens.seat(room.door_code, "Ada", **LAPTOP)
    room.step("open_round", number=1)
    ada.sees_round(1, 1)
    expect(ada.page.get_by_text("How certain are you?")).to_have_count(0)
