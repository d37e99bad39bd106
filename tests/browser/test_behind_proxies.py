"""Real pages behind proxies: one that keeps a room on one worker, and one that lets no websocket through."""

from collections.abc import Iterator
from urllib.parse import parse_qs, urlsplit

import pytest
from playwright.sync_api import Browser

from tests.browser.conftest import LayOut
from tests.browser.dealt import review_with
from tests.browser.screens import PHONE, Screens
from tests.browser.seat_screen import SeatScreen
from tests.live.bad_line import BadLine, Weather
from tests.serving import Server


def test_the_line_of_a_seat_tells_a_proxy_its_room(screens: Screens, lay_out: LayOut) -> None:
    room = lay_out(**review_with(["one_best"], rounds=1))
    seat = SeatScreen(*screens.page(**PHONE))
    seat.page.goto(f"{screens.origin}/seat/{room.door_code}")
    with seat.page.expect_websocket() as opened:
        seat.page.reload()
    assert parse_qs(urlsplit(opened.value.url).query)["room"] == [room.door_code]


@pytest.fixture
def polling_screens(browser: Browser, server: Server) -> Iterator[Screens]:
    """People behind a proxy that lets no websocket through."""
    line = BadLine(server.port, Weather(blocks_websockets=True))
    people = Screens(browser, line.address)
    yield people
    people.close()
    assert line.counts.refused > 0
    line.close()


def test_a_class_plays_by_long_polling_where_websockets_are_blocked(
    polling_screens: Screens, lay_out: LayOut, host_cookie: str
) -> None:
    room = lay_out(**review_with(["one_best"], rounds=1))
    with polling_screens.network_may_fail():
        seat = polling_screens.seat(room.door_code, "Wren Ulna")
        wall = polling_screens.wall(room.door_code)
        desk = polling_screens.desk(host_cookie, room.desk["room"])
        desk.go_on("Open round 1")
        seat.answer(room.desk["items"][0], right=True)
        wall.shows("1 of 1 answered")
        desk.go_on("Close the round")
        desk.go_on("Show the record")
        seat.shows("right · 1 mark")
