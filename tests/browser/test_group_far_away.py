"""Two real pages play a group's review over a line with 400 ms each way, a cut, and lost frames."""

from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, expect

from quizroom.marking import marks_of_room
from tests.browser.group_screen import come_in, door_code_of, items_of, open_group
from tests.browser.screen import WAIT_MS
from tests.browser.screens import Screens
from tests.live.bad_line import BadLine, Weather
from tests.live.group import room_behind
from tests.serving import Server

ROUNDS = 3
PATIENCE_MS = 60_000
"""A page waits eight seconds for a reply before it says a message again, and more than one may be lost."""


@pytest.fixture
def line(server: Server) -> Iterator[BadLine]:
    """400 ms each way."""
    expect.set_options(timeout=PATIENCE_MS)
    far = BadLine(server.port, Weather(delay_s=0.4))
    yield far
    far.close()
    expect.set_options(timeout=WAIT_MS)


@pytest.fixture
def far_away(browser: Browser, line: BadLine) -> Iterator[Screens]:
    """People behind that line."""
    people = Screens(browser, line.address)
    yield people
    people.close()


def test_no_answer_is_lost_however_bad_the_line_is(far_away: Screens, line: BadLine, server: Server) -> None:
    ada = open_group(far_away, handle="Ada", rounds=ROUNDS)
    door = door_code_of(ada)
    bo = come_in(far_away, door, "Bo")
    expect(ada.page.get_by_text("2 players here")).to_be_visible()
    items = items_of(room_behind(server, door))
    with far_away.network_may_fail():
        for seat in (ada, bo):
            seat.is_ready()
        for number, item in enumerate(items, 1):
            for seat in (ada, bo):
                seat.sees_round(number, ROUNDS)
                seat.choose(item, right=True)
            if number == 1:
                line.cut()
            for seat in (ada, bo):
                seat.hand_in()
            for seat in (ada, bo):
                expect(seat.page.locator(".seat-explained .record").first).to_be_visible()
            # From here on frames are lost: handshakes are made, and TCP never loses single ones of those.
            line.turn(Weather(delay_s=0.4, loss=0.05, seed=3))
            for seat in (ada, bo):
                seat.is_ready()
        for seat in (ada, bo):
            expect(seat.page.get_by_role("heading", name="The review is finished")).to_be_visible()
    totals = marks_of_room(room_behind(server, door)).totals.values()
    assert [(total.marks, total.of) for total in totals] == [(ROUNDS, ROUNDS)] * 2
