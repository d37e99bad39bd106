"""Three days after a review what was missed in it is due, and nothing else."""

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser

from quizroom.cli.desk_link import new_desk_key
from quizroom.rehearsal.entry import desk_cookie
from quizroom.rehearsal.host import Host
from quizroom.settings import Settings
from tests.browser.dealt import COURSE, FAMILIES, review_with
from tests.browser.mine_screen import MineScreen
from tests.browser.screens import Screens
from tests.browser.seat_screen import SeatScreen
from tests.serving import Server, StartServer, start

ROUNDS = 3
MISSED = 2


@pytest.fixture
def start_server(tmp_path: Path) -> Iterator[StartServer]:
    """Starts a server on the same data each time; all are stopped at the end."""
    started: list[Server] = []

    def start_again(**how: Any) -> Server:
        started.append(start(tmp_path / "data", **how))
        return started[-1]

    yield start_again
    for server in started:
        server.stop()


def review_with_one_missed(server: Server, people: Screens) -> tuple[SeatScreen, str]:
    """Somebody at the end of a review with one item missed, and its stem."""
    key = new_desk_key(Settings(data=server.data).database_url)
    host = Host(server.address, desk_cookie(server.address, key))
    course = {"id": COURSE, "families": FAMILIES}
    host.lay_out(title="HHC-KN 232", course=course, **review_with(["one_best"], rounds=ROUNDS))
    seat = people.seat(host.door_code, "Wren Ulna")
    for number in range(1, ROUNDS + 1):
        host.step("open_round", number=number)
        seat.sees_round(number, ROUNDS)
        seat.answer(_item(host, number), right=number != MISSED)
        host.step("close_round", number=number)
        host.step("show_record", number=number)
    host.step("end_review", number=ROUNDS)
    stem: str = _item(host, MISSED)["stem"]
    host.close()
    return seat, stem


def _item(host: Host, number: int) -> dict[str, Any]:
    return next(item for item in host.desk["items"] if item["round"] == number)


def test_three_days_later_what_was_missed_is_due(browser: Browser, start_server: StartServer) -> None:
    server = start_server()
    people = Screens(browser, server.address)
    seat, stem = review_with_one_missed(server, people)
    seat.shows("Second look: 1 item")
    with people.network_may_fail():
        server.stop()
        start_server(port=server.port, settings={"QUIZROOM_DAYS_AHEAD": "3"})
        mine = MineScreen(seat.page, seat.watch)
        today = mine.asked("/mine/api/today", lambda: mine.opens(f"{server.address}/mine"))
        mine.shows("1 item due today")
        mine.page.get_by_role("link", name="Begin").click()
        mine.looks_again(today["looks"][0], right=True)
        assert mine.page.locator(".then_stem").inner_text() == stem
        mine.shows("Asked again on")
    people.close()
