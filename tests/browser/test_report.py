"""The report as a host comes to it: from the finished review, in all widths, without barriers."""

from collections.abc import Callable

import pytest
from playwright.sync_api import Page, expect

from quizroom.rehearsal.host import Host
from quizroom.rehearsal.people import people
from quizroom.rehearsal.seat import SimulatedSeat
from quizroom.rehearsal.skill import Choice, task_of
from tests.browser.barriers import barriers, too_wide
from tests.browser.dealt import review_with
from tests.browser.screens import LAPTOP, NARROW_PHONE, PHONE, Screens
from tests.serving import Server

ROUNDS, PLAYERS = 3, 6


def play(host: Host, server: Server) -> None:
    """A review to its end: in each round the first half is right, the others take the first wrong letter."""
    seats = [SimulatedSeat(server.address, host.door_code, one) for one in people(PLAYERS, seed=1)]
    for seat in seats:
        seat.enter()
    for number in range(1, ROUNDS + 1):
        host.step("open_round", number=number)
        task = task_of(host.desk, number)
        wrong = next(letter for letter in task.letters if letter not in task.key)
        for place, seat in enumerate(seats):
            seat.answer(number, Choice(choice=task.key if place < PLAYERS / 2 else (wrong,)))
        host.step("close_round", number=number)
        host.step("show_record", number=number)
    host.step("end_review", number=ROUNDS)
    for seat in seats:
        seat.drop()


@pytest.fixture
def report(screens: Screens, host_cookie: str, lay_out: Callable[..., Host], server: Server) -> Page:
    """The report, reached from the desk of a review that has just been played."""
    host = lay_out(**review_with(("one_best",), rounds=ROUNDS))
    play(host, server)
    desk = screens.desk(host_cookie, host.desk["room"])
    desk.page.get_by_role("link", name="Open the report").click()
    expect(desk.page.get_by_role("heading", level=1)).to_have_text("HHC-KN 232")
    return desk.page


def test_a_finished_review_leads_to_its_report_and_that_to_the_course(
    report: Page, screens: Screens, host_cookie: str, axe_source: str
) -> None:
    expect(report.get_by_role("heading", name="Explain again")).to_be_visible()
    expect(report.get_by_text("6 people answered.")).to_be_visible()
    row = report.get_by_role("table", name="Every item with its numbers").get_by_role("row").nth(1)
    expect(row).to_contain_text("too few people")
    row.get_by_role("link").click()
    expect(report.locator("#round-1")).to_be_in_viewport()
    with report.expect_download() as download:
        report.get_by_role("link", name="Item sheets as CSV").click()
    assert len(download.value.path().read_text("utf-8-sig").splitlines()) == ROUNDS + 1
    address = report.url.partition("#")[0]
    for device in (LAPTOP, PHONE, NARROW_PHONE):
        page, _ = screens.page(cookies=host_cookie, **device)
        page.goto(address)
        assert too_wide(page) + barriers(page, axe_source) == []
    report.get_by_role("link", name="The course over time").click()
    expect(report.get_by_role("heading", name="Explain again next time")).to_be_visible()
    assert too_wide(report) + barriers(report, axe_source) == []
    report.get_by_role("link", name="Desk").click()
    expect(report.get_by_role("link", name="Report of HHC-KN 232").first).to_be_visible()
    assert barriers(report, axe_source) == []
