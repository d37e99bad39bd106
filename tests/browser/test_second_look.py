"""What was missed in a review comes back: just that, asked before it is shown, and again days later."""

from datetime import UTC, datetime, timedelta
from typing import Any

import pytest
from playwright.sync_api import expect

from tests.browser.barriers import barriers, too_wide
from tests.browser.conftest import LayOut
from tests.browser.dealt import review_with
from tests.browser.mine_screen import Look, MineScreen
from tests.browser.screens import LAPTOP, PHONE, Device, Screens

ROUNDS = 4
MISSED = (1, 3, 4)


def play(screens: Screens, lay_out: LayOut, **device: Any) -> tuple[MineScreen, list[str]]:
    """Somebody at the end of a review who has missed three items of four; the stems of these."""
    room = lay_out(**review_with(["one_best"], rounds=ROUNDS))
    seat = screens.seat(room.door_code, "Wren Ulna", **device)
    missed: list[str] = []
    for number in range(1, ROUNDS + 1):
        room.step("open_round", number=number)
        seat.sees_round(number, ROUNDS)
        item = next(item for item in room.desk["items"] if item["round"] == number)
        seat.answer(item, right=number not in MISSED)
        room.step("close_round", number=number)
        room.step("show_record", number=number)
        missed += [item["stem"]] if number in MISSED else []
    room.step("end_review", number=ROUNDS)
    seat.shows("Second look: 3 items")
    return MineScreen(seat.page, seat.watch), missed


def missed_looks(mine: MineScreen) -> list[Look]:
    """Go from the seat to the second look of the review."""
    link = mine.page.get_by_role("link", name="Second look: 3 items")
    found: list[Look] = mine.asked("/mine/api/second-look/", link.click)["looks"]
    return found


def test_the_three_missed_items_and_no_others_are_asked_before_anything_is_shown(
    screens: Screens, lay_out: LayOut
) -> None:
    mine, missed = play(screens, lay_out)
    looks = missed_looks(mine)
    asked_then: list[str] = []
    for number, look in enumerate(looks):
        mine.looks_again(look, right=number != 1, by="keys")
        mine.says("right · 1 mark." if number != 1 else "wrong · 0 marks.")
        asked_then.append(mine.page.locator(".then_stem").inner_text())
        expect(mine.page.locator(".record").first).to_be_visible()
        mine.goes_on(by="keys")
    assert sorted(asked_then) == sorted(missed)
    mine.shows("2 of 3 items right.")
    mine.page.get_by_role("link", name="To today's page").click()
    mine.shows("all looked at again")


@pytest.mark.parametrize("device", [PHONE, LAPTOP], ids=["phone", "laptop"])
def test_no_state_of_the_second_look_has_a_barrier_or_is_cut_off(
    device: Device, screens: Screens, lay_out: LayOut, axe_source: str
) -> None:
    mine, _ = play(screens, lay_out, **device)
    look = missed_looks(mine)[0]
    mine.is_asked(look)
    assert (barriers(mine.page, axe_source), too_wide(mine.page)) == ([], []), "asked"
    mine.looks_again(look, right=False)
    assert (barriers(mine.page, axe_source), too_wide(mine.page)) == ([], []), "shown"
    for place in ("", "#/practice"):
        mine.opens(f"{screens.origin}/mine{place}")
        assert (barriers(mine.page, axe_source), too_wide(mine.page)) == ([], []), place


def test_the_plan_is_kept_with_its_date_and_minutes(screens: Screens, lay_out: LayOut) -> None:
    mine, _ = play(screens, lay_out)
    mine.opens(f"{screens.origin}/mine")
    mine.page.get_by_label("Minutes a day").fill("7")
    practical = datetime.now(UTC).date() + timedelta(days=30)
    mine.page.get_by_label("Day of the practical").fill(practical.isoformat())
    mine.page.get_by_role("button", name="Save the plan").click()
    mine.shows("Saved.")
    mine.shows(f"Expected on {practical:%a} {practical.day} {practical:%b}")
    mine.page.reload()
    expect(mine.page.get_by_label("Minutes a day")).to_have_value("7")


def test_the_missed_records_are_printed_and_the_plan_is_a_calendar(screens: Screens, lay_out: LayOut) -> None:
    mine, _ = play(screens, lay_out)
    mine.opens(f"{screens.origin}/mine")
    with mine.page.expect_download() as sheet:
        mine.page.get_by_role("button", name="Sheet, A4").click()
    assert sheet.value.path().read_bytes().startswith(b"%PDF-")
    mine.page.get_by_role("button", name="Make the address").click()
    address = mine.page.get_by_label("Address for your calendar program")
    feed = mine.page.request.get(address.input_value())
    assert feed.text().startswith("BEGIN:VCALENDAR")
    mine.page.get_by_role("button", name="Make it void").click()
    expect(address).to_have_count(0)
