"""A player's own key at a real screen: shown, carried to another device, taken out, deleted."""

import json

import pytest
from playwright.sync_api import Page, expect

from tests.browser.barriers import barriers, too_wide
from tests.browser.conftest import LayOut
from tests.browser.screens import PHONE, Screens
from tests.browser.sizes import resize


def seated(screens: Screens, lay_out: LayOut) -> Page:
    """Somebody who has sat in a review, on the own page."""
    seat = screens.seat(lay_out().door_code, "Quartz Lunate")
    seat.is_in()
    seat.page.get_by_role("link", name="Second look").click()
    expect(seat.page.get_by_role("heading", name="Your key")).to_be_visible()
    return seat.page


def words_on(page: Page) -> list[str]:
    """The recovery phrase."""
    page.get_by_role("button", name="Show link, QR code and words").click()
    expect(page.locator(".key_words li")).to_have_count(8)
    return page.locator(".key_words li").all_inner_texts()


def test_another_device_opens_the_same_history_by_link_or_by_words(screens: Screens, lay_out: LayOut) -> None:
    page = seated(screens, lay_out)
    expect(page.get_by_text("1 review, and your second looks")).to_be_visible()
    words = words_on(page)
    link = page.get_by_role("textbox", name="Private link").input_value()
    other, _ = screens.page(**PHONE)
    # The link holds the address by which other devices reach this machine: to this browser another site.
    other.goto(f"{screens.origin}/mine#{link.partition('#')[2]}")
    expect(other.get_by_text("1 review, and your second looks")).to_be_visible()
    assert "#" not in other.url.rstrip("#/")
    third, _ = screens.page(**PHONE)
    third.goto(f"{screens.origin}/mine")
    expect(third.get_by_text("Nothing is kept under this key yet.")).to_be_visible()
    third.get_by_label("Use a key from another device").fill(" ".join(words))
    third.get_by_role("button", name="Use this key").click()
    expect(third.get_by_text("1 review, and your second looks")).to_be_visible()
    third.get_by_role("button", name="Back to the key that was here before").click()
    expect(third.get_by_text("Nothing is kept under this key yet.")).to_be_visible()


def test_everything_is_taken_out_with_one_press_and_deleted_with_two(
    screens: Screens, lay_out: LayOut
) -> None:
    page = seated(screens, lay_out)
    with page.expect_download() as saved:
        page.get_by_role("button", name="Everything, as JSON").click()
    history = json.loads(saved.value.path().read_text("utf-8"))
    assert [review["handle"] for review in history["reviews"]] == ["Quartz Lunate"]
    with page.expect_download() as saved:
        page.get_by_role("button", name="as a table (CSV)").click()
    assert saved.value.path().read_text("utf-8-sig").startswith("review,course,handle,round")
    page.get_by_role("button", name="Delete everything …").click()
    page.get_by_role("button", name="Yes, delete everything").click()
    expect(page.get_by_text("Everything is deleted, here and on the server.")).to_be_visible()
    assert page.evaluate("Object.keys(localStorage).filter((name) => name.startsWith('quizroom.own'))") == []
    page.goto(f"{screens.origin}/mine")
    expect(page.get_by_text("Nothing is kept under this key yet.")).to_be_visible()


@pytest.mark.parametrize("width", [320, 360, 1280])
def test_the_panel_with_everything_open_is_free_of_barriers(
    screens: Screens, lay_out: LayOut, axe_source: str, width: int
) -> None:
    page = seated(screens, lay_out)
    resize(page, width, 740)
    words_on(page)
    page.get_by_role("button", name="Delete everything …").click()
    expect(page.get_by_text("This cannot be undone.")).to_be_visible()
    assert (barriers(page, axe_source), too_wide(page)) == ([], [])
