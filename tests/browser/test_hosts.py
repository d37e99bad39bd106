"""An owner invites an assistant, who runs a round; the owner keeps reviews in order as things."""

import re
from datetime import UTC, datetime

import pytest
from playwright.sync_api import Locator, Page, expect

from tests.browser.barriers import barriers, too_wide
from tests.browser.conftest import LayOut
from tests.browser.dealt import review_with
from tests.browser.desk_screen import DeskScreen
from tests.browser.screens import LAPTOP, PHONE, Screens

PASSWORD = "bursa ochre lantern Tuesday"  # noqa: S105 - of nobody
DAY = datetime(2031, 9, 3, 8, 30, tzinfo=UTC)
TITLE = "HHC-KN 232 run by an assistant"


@pytest.fixture
def owner(screens: Screens, host_cookie: str) -> Page:
    """The owner's page, four hours behind the server's time in September."""
    page, _ = screens.page(cookies=host_cookie, timezone_id="America/New_York", **LAPTOP)
    return page


def without_barriers(page: Page, axe_source: str) -> None:
    assert barriers(page, axe_source) == []
    assert too_wide(page) == []


def test_an_assistant_is_invited_signs_in_with_a_password_and_runs_a_round(
    screens: Screens, owner: Page, lay_out: LayOut, axe_source: str
) -> None:
    lay_out(**review_with(["one_best"], rounds=2), title=TITLE)
    owner.goto(f"{screens.origin}/desk")
    owner.get_by_role("link", name="Hosts").click()
    owner.get_by_role("button", name="Make an invitation").click()
    link = owner.get_by_label("Link").input_value()
    without_barriers(owner, axe_source)

    phone, watch = screens.page(**PHONE)
    phone.goto(f"{screens.origin}/invitation/{link.rpartition('/')[2]}")
    without_barriers(phone, axe_source)
    phone.get_by_label("Your name").fill("T. Bracken")
    phone.get_by_label("Password").fill(PASSWORD)
    phone.get_by_role("button", name="Become a host").click()
    phone.goto(f"{screens.origin}/desk/hand-over")
    phone.get_by_role("button", name="Close the desk on this device").click()

    phone.goto(f"{screens.origin}/sign-in")
    without_barriers(phone, axe_source)
    phone.get_by_label("Name").fill("t. bracken")
    phone.get_by_label("Password").fill(PASSWORD)
    phone.get_by_role("button", name="Sign in").click()
    expect(phone.get_by_text("T. Bracken, helping Host")).to_be_visible()
    expect(phone.get_by_role("button", name="Deal the items")).to_have_count(0)
    expect(phone.get_by_role("link", name="Hosts")).to_have_count(0)
    expect(phone.get_by_role("button", name="More")).to_have_count(0)
    without_barriers(phone, axe_source)

    phone.get_by_role("button", name=TITLE).first.click()
    desk = DeskScreen(phone, watch)
    desk.next_step.click()
    expect(desk.next_step).to_contain_text("Close the round")
    desk.next_step.click()
    expect(desk.next_step).to_contain_text("Show the record")
    expect(phone.get_by_role("button", name="Add an own item")).to_have_count(0)

    owner.goto(f"{screens.origin}/desk/hosts")
    owner.locator("summary", has_text="Remove").click()
    with screens.network_may_fail():  # the server ends the line of who is no host any more
        owner.get_by_role("button", name="Remove T. Bracken").click()
        expect(owner.get_by_text("T. Bracken is no host any more.")).to_be_visible()
        expect(phone.locator(".complaint")).to_contain_text("Only the host may do that")


def dialog(page: Page, title: str) -> Locator:
    page.get_by_role("button", name=f"More for {title}", exact=True).click()
    return page.get_by_role("dialog")


def test_an_owner_renames_copies_plans_archives_and_deletes(
    screens: Screens, owner: Page, lay_out: LayOut, axe_source: str
) -> None:
    lay_out(**review_with(["one_best"], rounds=2), title="To be put in order").step("end_review", number=0)
    owner.clock.set_fixed_time(DAY)
    owner.goto(f"{screens.origin}/desk")
    lines = owner.locator(".reviews_line")
    owner.get_by_label("Title or course").fill("put in order")
    expect(lines).to_have_count(1)

    opened = dialog(owner, "To be put in order")
    without_barriers(owner, axe_source)
    opened.get_by_label("Title").fill("Put in order")
    opened.get_by_role("button", name="Rename").click()
    expect(owner.get_by_role("status").first).to_contain_text("Put in order")

    dialog(owner, "Put in order").get_by_role("button", name="With the same items").click()
    expect(lines).to_have_count(2)
    copy = dialog(owner, "Copy of Put in order")
    copy.get_by_label("Planned for").fill("2031-09-04T08:15")
    copy.get_by_role("button", name="Plan it", exact=True).click()
    expect(lines.first).to_contain_text(re.compile(r"Copy of.*planned for Thu,? 4 Sept? 2031,? (at )?08:15"))
    planned = re.findall(r'"planned_at":(\d+)', " ".join(screens.watches[0].frames))
    assert int(planned[-1]) == datetime(2031, 9, 4, 12, 15, tzinfo=UTC).timestamp() * 1000

    dialog(owner, "Put in order").get_by_role("button", name="Archive").click()
    expect(lines).to_have_count(1)
    owner.get_by_label("State").select_option("archived")
    expect(lines).to_contain_text("Put in order")
    sure = dialog(owner, "Put in order")
    sure.get_by_role("button", name="Delete …").click()
    without_barriers(owner, axe_source)
    sure.get_by_role("button", name="Delete it for good").click()
    expect(lines).to_have_count(0)
    owner.get_by_label("State").select_option("all")
    expect(lines).to_have_count(1)


def test_items_are_moved_on_the_desk(screens: Screens, host_cookie: str, lay_out: LayOut) -> None:
    room = lay_out(**review_with(["one_best"], rounds=3)).desk["room"]
    desk = screens.desk(host_cookie, room, **LAPTOP)
    expect(desk.page.locator(".items_stem")).to_have_count(3)
    before = desk.page.locator(".items_stem").all_inner_texts()
    desk.page.locator(".items_item").nth(2).click()
    desk.page.get_by_role("button", name="Earlier").click()
    expect(desk.page.locator(".items_stem").nth(1)).to_have_text(before[2])
    desk.page.get_by_role("button", name="Earlier").click()
    expect(desk.page.locator(".items_stem")).to_have_text([before[2], before[0], before[1]])
    expect(desk.page.get_by_role("button", name="Earlier")).to_be_disabled()
