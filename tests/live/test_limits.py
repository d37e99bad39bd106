"""What a real server takes from a browser, and what it does not: compression, and more than it can hold."""

import re
import signal
import socket
from collections.abc import Iterator
from contextlib import ExitStack, contextmanager
from http.client import HTTPConnection
from pathlib import Path
from typing import Any

import pytest
import websocket

from quizroom.exchange import picture_file
from quizroom.exchange.review_file import faults
from tests.live.lesson import Lesson
from tests.live.proxied import COMPOSE

LARGEST_REQUEST = 2_000_000
OFFER = "Sec-WebSocket-Extensions: permessage-deflate; client_max_window_bits"
"""As browsers offer compression (RFC 7692, section 7.1)."""
MEBIBYTE = 1 << 20


def test_an_offer_of_compression_is_not_taken(lesson: Lesson) -> None:
    address = f"ws://127.0.0.1:{lesson.server.port}/socket.io/?EIO=4&transport=websocket"
    line: Any = websocket.create_connection(address, timeout=10, header=[OFFER])
    try:
        assert line.status == 101
        assert "sec-websocket-extensions" not in {name.lower() for name in line.getheaders()}
        frame = line.recv_frame()
        assert (frame.rsv1, frame.data[:2]) == (0, b"0{")
    finally:
        line.shutdown()


def sent(lesson: Lesson, path: str, size: int) -> tuple[int, str]:
    """What comes back for a form of so many bytes."""
    connection = HTTPConnection("127.0.0.1", lesson.server.port, timeout=20)
    try:
        headers = {"Content-Type": "application/x-www-form-urlencoded", "Cookie": "quizroom_form=x"}
        connection.request("POST", path, b"proof=" + b"x" * size, headers)
        answer = connection.getresponse()
        return answer.status, answer.read().decode()
    finally:
        connection.close()


def test_a_form_that_is_too_large_is_refused_in_a_sentence_and_others_are_served(lesson: Lesson) -> None:
    status, page = sent(lesson, "/sign-in", LARGEST_REQUEST)
    assert status == 413
    assert "larger than the server takes" in page
    assert lesson.seats["ada"].done("probe_time")


def test_a_form_of_another_browser_is_refused_with_what_to_do(lesson: Lesson) -> None:
    status, page = sent(lesson, "/sign-in", 10)
    assert status == 403
    assert "Load its page anew" in page


@pytest.mark.parametrize("largest", [picture_file.LARGEST_FILE, faults.LARGEST_FILE, LARGEST_REQUEST])
def test_the_proxy_of_the_compose_file_lets_through_what_the_server_takes(largest: int) -> None:
    (mebibytes,) = re.findall(r"client_max_body_size (\d+)m;", COMPOSE["configs"]["proxy"]["content"])
    assert int(mebibytes) * MEBIBYTE >= largest


LECTURE = 300
ROOM_AT_THE_DOOR = Path("/proc/sys/net/core/somaxconn")
"""How many the system lets a server keep waiting (listen(2))."""


@contextmanager
def standing_still(lesson: Lesson) -> Iterator[None]:
    """The server does nothing for a while."""
    lesson.server.process.send_signal(signal.SIGSTOP)
    try:
        yield
    finally:
        lesson.server.process.send_signal(signal.SIGCONT)


def asking(lesson: Lesson) -> socket.socket:
    """A connection that has asked whether the server is well."""
    line = socket.create_connection(("127.0.0.1", lesson.server.port), 2)
    line.sendall(b"GET /healthz HTTP/1.0\r\n\r\n")
    return line


@pytest.mark.skipif(not ROOM_AT_THE_DOOR.exists(), reason="what the system allows is read from /proc: Linux")
def test_a_lecture_that_comes_at_once_waits_at_the_door_and_is_not_sent_away(lesson: Lesson) -> None:
    size = min(LECTURE, int(ROOM_AT_THE_DOOR.read_text(encoding="ascii")))
    assert size > 100  # the usual door has room for 50
    with ExitStack() as leaving:
        with standing_still(lesson):
            lines = [leaving.enter_context(asking(lesson)) for _ in range(size)]
        lines[-1].settimeout(20)
        assert lines[-1].recv(100).startswith(b"HTTP/1.1 200")
    assert lesson.seats["ada"].done("probe_time")
