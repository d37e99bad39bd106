"""The server is killed in the middle of a round, as by a power cut, and started again."""

import re
import time

import pytest

from tests.browser.conftest import LayOut
from tests.browser.dealt import review_with
from tests.browser.screens import Screens
from tests.browser.seat_screen import SeatScreen
from tests.serving import Server, StartServer

OUTAGE_S = 3


@pytest.fixture
def server(start_server: StartServer) -> Server:
    """A server of its own: the others' must not be killed."""
    return start_server()


def seconds_left(seat: SeatScreen) -> int:
    words = seat.page.get_by_role("timer").locator(".unseen").inner_text()
    found = re.search(r"(?:(\d+) minutes? ?)?(?:(\d+) seconds?)? left", words)
    assert found, words
    return 60 * int(found[1] or 0) + int(found[2] or 0)


def test_a_killed_server_brings_everybody_back_and_gives_the_time_back(
    screens: Screens, lay_out: LayOut, server: Server, start_server: StartServer, host_cookie: str
) -> None:
    room = lay_out(**review_with(["one_best"], rounds=1))
    seats = [screens.seat(room.door_code, handle) for handle in ("Wren Ulna", "Teal Talus", "Rook Radius")]
    wall = screens.wall(room.door_code)
    desk = screens.desk(host_cookie, room.desk["room"])
    item = desk.open_round(1)
    seats[0].answer(item, right=True)
    left = seconds_left(seats[0])
    with screens.network_may_fail():
        server.kill()
        seats[1].choose(item, right=True)
        seats[1].hand_in()
        for screen in (*seats, wall, desk):
            screen.shows("Connection lost")
        time.sleep(OUTAGE_S)
        start_server(server.data, port=server.port)
        for screen in (*seats, wall, desk):
            screen.hides("Connection lost")
        for seat in seats[:2]:
            seat.is_received()
    assert seconds_left(seats[0]) >= left - 1
    seats[2].answer(item, right=False)
    desk.go_on("Close the round")
    wall.shows("3 of 3 answered")
    seats[0].shows("right · 1 mark")
    seats[1].shows("right · 1 mark")
    seats[2].shows("wrong · 0 marks")
