"""More time that a player takes by themselves, in real browsers: offered in words, taken by one key."""

from playwright.sync_api import expect

from tests.browser.barriers import barriers, too_wide
from tests.browser.conftest import LayOut
from tests.browser.dealt import review_with
from tests.browser.screens import LAPTOP, NARROW_PHONE, PHONE, Screens

SECONDS = 32
"""Long enough to be taken at leisure, short enough to hear the offer 30 seconds before the end."""


def test_a_player_takes_more_time_by_key_is_offered_it_in_words_and_nobody_ends_it_unasked(
    screens: Screens, lay_out: LayOut, host_cookie: str, axe_source: str
) -> None:
    room = lay_out(**review_with(("one_best",), rounds=2), seconds=SECONDS, holds_results=True)
    desk = screens.desk(host_cookie, room.desk["room"])
    ada = screens.seat(room.door_code, "Ada", **LAPTOP)
    bo = screens.seat(room.door_code, "Bo", **NARROW_PHONE)
    always = bo.page.get_by_role("checkbox", name="Always give me more time")
    expect(always).not_to_be_checked()
    assert barriers(bo.page, axe_source) + too_wide(bo.page) == []

    item = desk.open_round(1)
    expect(ada.page.get_by_role("button", name="More time")).to_be_visible()
    spoken = ada.page.locator("[aria-live=polite]")
    expect(spoken).to_contain_text("Press plus for more time.")
    expect(ada.page.get_by_text("30 seconds or less left")).to_be_visible()
    assert barriers(ada.page, axe_source) == []
    expect(ada.page.locator("#stem")).to_be_focused()
    ada.page.keyboard.press("+")
    expect(spoken).to_contain_text("32 seconds added.")
    expect(ada.page.get_by_role("timer")).to_contain_text("1:0")
    expect(ada.page.get_by_text("Taken once")).to_be_visible()
    bo.answer(item, right=True)
    assert barriers(bo.page, axe_source) + too_wide(bo.page) == []
    desk.go_on("Close the round")
    expect(ada.page.get_by_text("Closed for the others.")).to_be_visible()
    expect(desk.page.get_by_text("1 may still answer")).to_be_visible()
    expect(desk.page.get_by_role("button", name="Ada")).to_contain_text("time")

    refused = room.step("show_result", number=1)  # a second desk that does not know
    assert refused["code"] == "own_time_runs"
    desk.page.get_by_role("button", name="Show the record").click()
    expect(desk.page.get_by_role("heading", name="Somebody still has time")).to_be_visible()
    desk.page.get_by_role("button", name="Show the record now").click()
    expect(ada.page.get_by_text("Closed for the others.")).to_have_count(0)

    always.check()
    expect(bo.page.locator("[aria-live=polite]")).to_contain_text("You have more time in every round.")
    bo.page.reload()
    expect(always).to_be_checked()
    desk.open_round(2)
    expect(bo.page.get_by_role("timer")).to_contain_text("5:")
    expect(ada.page.get_by_role("timer")).not_to_contain_text("5:")


def test_whoever_was_too_late_may_take_it_while_the_result_is_held(screens: Screens, lay_out: LayOut) -> None:
    room = lay_out(**review_with(("one_best",), rounds=1), seconds=60, holds_results=True)
    ada = screens.seat(room.door_code, "Ada", **PHONE)
    room.step("open_round", number=1)
    expect(ada.page.get_by_role("button", name="More time")).to_be_visible()
    room.step("close_round", number=1)
    expect(ada.page.get_by_text("Round closed.")).to_be_visible()
    expect(ada.page.get_by_text("Not done? You may still take it.")).to_be_visible()
    expect(ada.page.locator("[aria-live=polite]")).to_contain_text("Not done? Press plus.")
    ada.page.get_by_role("button", name="More time").click()
    expect(ada.page.get_by_text("Closed for the others.")).to_be_visible()
    expect(ada.page.get_by_role("button", name="Hand in")).to_be_visible()
