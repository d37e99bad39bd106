"""Long polling, and requests that only look like the start of a line, as strangers may send them."""

import json
import socket
from dataclasses import dataclass
from http.client import HTTPConnection
from typing import Any

import pytest

from quizroom.pages.host_entry import COOKIE
from tests.live.lesson import Lesson
from tests.live.test_frames import hang_up, heard, line_to, resident, said_since

POLLING = "/socket.io/?EIO=4&transport=polling"
ELSEWHERE = "https://elsewhere.example"
TOO_MUCH = 40_000_000
BETWEEN = "\x1e"
"""Parts the packets of a poll (Engine.IO protocol 4)."""


@dataclass
class Poller:
    """Somebody who sends polls, and fetches what waits only when told to."""

    lesson: Lesson
    address: str = POLLING

    def ask(self, method: str, body: str = "", **headers: str) -> tuple[int, dict[str, str], str]:
        """Status, headers by their names in small letters, and body of one request."""
        connection = HTTPConnection("127.0.0.1", self.lesson.server.port, timeout=10)
        try:
            connection.request(method, self.address, body or None, headers)
            answer = connection.getresponse()
            named = {name.lower(): value for name, value in answer.getheaders()}
            return answer.status, named, answer.read().decode()
        finally:
            connection.close()

    def greeted(self) -> "Poller":
        """The same with a session (Engine.IO 4) and a greeting (Socket.IO 5)."""
        sid = json.loads(self.ask("GET")[2][1:])["sid"]
        self.address = f"{POLLING}&sid={sid}"
        assert self.ask("POST", "40")[0] == 200
        return self


@pytest.fixture
def poller(lesson: Lesson) -> Poller:
    return Poller(lesson).greeted()


def text(kind: str, number: int = 1, **fields: Any) -> str:
    message = {"id": "m", "type": kind, **fields}
    return f"42{number}{json.dumps(['say', message])}"


def test_another_sites_page_can_neither_begin_a_session_nor_speak_in_one(
    lesson: Lesson, poller: Poller
) -> None:
    cookie = f"{COOKIE}={lesson.cookie}"
    assert Poller(lesson).ask("GET", Origin=ELSEWHERE, Cookie=cookie)[0] == 400
    assert poller.ask("POST", text("probe_time"), Origin=ELSEWHERE, Cookie=cookie)[0] == 400
    assert poller.ask("GET", Origin=ELSEWHERE)[0] == 400
    assert poller.ask("GET")[0] == 200


def test_no_site_can_load_a_poll_as_a_script_and_nobody_keeps_one(lesson: Lesson, poller: Poller) -> None:
    status, _, body = Poller(lesson, f"{POLLING}&j=0").ask("GET")
    assert (status, "___eio" in body) == (400, False)
    _, headers, _ = poller.ask("GET")
    assert headers["content-type"].startswith("text/plain")
    assert (headers["x-content-type-options"], headers["cache-control"]) == ("nosniff", "no-store")


def test_nonsense_is_answered_even_if_what_waits_is_never_fetched(lesson: Lesson, poller: Poller) -> None:
    assert poller.ask("POST", text("probe_time"))[0] == 200
    assert poller.ask("POST", "4{")[0] in (200, 400)
    assert poller.ask("GET")[0] == 400
    assert lesson.seats["ada"].done("probe_time")


def test_who_polls_and_never_fetches_is_let_go(lesson: Lesson, poller: Poller) -> None:
    memory = resident(lesson.server.process.pid)
    many = BETWEEN.join(text("probe_time", number) for number in range(16))
    # A reply has more than a hundred characters, so these are many times what may wait.
    assert any(poller.ask("POST", many)[0] == 400 for _ in range(10_000))
    assert resident(lesson.server.process.pid) < memory + TOO_MUCH
    assert lesson.seats["ada"].done("probe_time")


def test_a_packet_that_promises_many_parts_ends_its_line_and_keeps_no_memory(lesson: Lesson) -> None:
    line = line_to(lesson)
    line.send('459999999999-["say",{"_placeholder":true,"num":0}]')
    assert heard(line) in ("", "1")
    hang_up(line)
    assert lesson.seats["ada"].done("probe_time")


def test_a_line_has_its_credits_once_however_often_it_says_goodbye(lesson: Lesson) -> None:
    line = line_to(lesson)
    told = []
    for number in range(1, 8):
        line.send(text("watch_wall", number, door_code="YYYYY"))
        told.append("slow_down" in heard(line))
    line.send("41")
    line.send("40")
    assert heard(line).startswith("44")
    assert told == [False] * 5 + [True] * 2
    hang_up(line)


MISSHAPEN = [
    "Upgrade: websocket\r\nConnection: close",
    "Upgrade: websocket\r\nConnection: Upgrade",
    "Upgrade: websocket\r\nConnection: Upgrade\r\nSec-WebSocket-Version: 99\r\nSec-WebSocket-Key: x",
]


@pytest.mark.parametrize("headers", MISSHAPEN)
def test_a_misshapen_upgrade_is_told_nothing_of_the_insides(lesson: Lesson, headers: str) -> None:
    request = f"GET /socket.io/?EIO=4&transport=websocket HTTP/1.1\r\nHost: x\r\n{headers}\r\n\r\n"
    with socket.create_connection(("127.0.0.1", lesson.server.port), 5) as line:
        line.sendall(request.encode())
        line.shutdown(socket.SHUT_WR)
        answer = b"".join(iter(lambda: line.recv(4096), b"")).decode()
    assert answer.startswith("HTTP/1.1 ")
    assert not any(inside in answer for inside in ("Traceback", "File ", ".py"))


def test_the_name_of_a_session_begins_no_line_of_the_log(lesson: Lesson) -> None:
    before = lesson.server.log.stat().st_size
    assert Poller(lesson, f"{POLLING}&sid=a%0Aforged").ask("GET")[0] == 400
    assert lesson.seats["ada"].done("probe_time")
    lines = said_since(lesson, before).splitlines()
    assert not any(line.startswith("forged") for line in lines)
