"""Players are told that results are kept under a key of their own, and refuse with one press."""

from typing import Any

import pytest
from playwright.sync_api import Page, expect

from tests.browser.barriers import barriers, too_wide
from tests.browser.conftest import LayOut
from tests.browser.screens import NARROW_PHONE, PHONE, Screens
from tests.browser.seat_screen import SeatScreen

KEPT = "Your results are kept for a second look"
NOT_KEPT = "Your results are not kept for a second look"


def key_in(page: Page) -> str | None:
    """The key that the browser keeps."""
    key: str | None = page.evaluate("localStorage.getItem('quizroom.own_key')")
    return key


def test_who_keeps_the_tick_is_kept_and_can_refuse_and_think_better_of_it(
    screens: Screens, lay_out: LayOut
) -> None:
    seat = screens.seat(lay_out().door_code, "Wren Ulna")
    seat.is_in()
    expect(seat.page.get_by_text(KEPT)).to_be_visible()
    key = key_in(seat.page)
    assert key is not None
    seat.page.get_by_role("button", name="Do not keep them").click()
    expect(seat.page.get_by_text(NOT_KEPT)).to_be_visible()
    seat.says("Your results are not kept.")
    seat.page.reload()
    expect(seat.page.get_by_text(NOT_KEPT)).to_be_visible()
    seat.page.get_by_role("button", name="Keep them").click()
    expect(seat.page.get_by_text(KEPT)).to_be_visible()
    assert key_in(seat.page) == key


def test_who_takes_the_tick_away_at_the_door_never_gets_a_key(screens: Screens, lay_out: LayOut) -> None:
    seat = SeatScreen(*screens.page(**PHONE))
    seat.page.goto(f"{screens.origin}/seat/{lay_out().door_code}")
    seat.page.get_by_label("Keep my results for a second look").uncheck()
    seat.enter("Wren Ulna")
    seat.is_in()
    expect(seat.page.get_by_text(NOT_KEPT)).to_be_visible()
    assert key_in(seat.page) is None


def test_the_end_of_the_review_says_it_again(screens: Screens, lay_out: LayOut) -> None:
    host = lay_out()
    seat = screens.seat(host.door_code, "Wren Ulna")
    seat.is_in()
    host.step("end_review", number=0)
    expect(seat.page.get_by_role("heading", name="The review is finished")).to_be_visible()
    expect(seat.page.get_by_text(KEPT)).to_be_visible()
    expect(seat.page.get_by_role("link", name="Second look")).to_have_attribute("href", "/mine")


@pytest.mark.parametrize("size", [NARROW_PHONE, PHONE], ids=["320 px", "phone"])
def test_door_seat_and_privacy_are_free_of_barriers(
    screens: Screens, lay_out: LayOut, axe_source: str, size: dict[str, Any]
) -> None:
    seat = SeatScreen(*screens.page(**size))
    seat.page.goto(f"{screens.origin}/seat/{lay_out().door_code}")
    expect(seat.page.get_by_label("Handle")).to_be_visible()
    assert (barriers(seat.page, axe_source), too_wide(seat.page)) == ([], [])
    seat.enter("Wren Ulna")
    seat.is_in()
    assert (barriers(seat.page, axe_source), too_wide(seat.page)) == ([], [])
    seat.page.goto(f"{screens.origin}/privacy")
    expect(seat.page.get_by_role("heading", name="What is stored", exact=False).first).to_be_visible()
    assert barriers(seat.page, axe_source) == []
    assert seat.page.evaluate("document.documentElement.scrollWidth <= innerWidth")
