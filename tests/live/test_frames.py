"""Bare frames against a real server: too large, cut short, or of no protocol at all. Others are served."""

import os
from contextlib import suppress
from pathlib import Path
from random import Random
from typing import Any

import pytest
import websocket

from quizroom.pages.host_entry import COOKIE
from tests.live.lesson import Lesson

LARGEST = 64_000


def line_to(lesson: Lesson) -> websocket.WebSocket:
    """A bare websocket that has greeted the server (Engine.IO 4, Socket.IO 5)."""
    address = lesson.server.address.replace("http", "ws", 1)
    line = websocket.create_connection(f"{address}/socket.io/?EIO=4&transport=websocket", timeout=5)
    assert heard(line).startswith("0{")
    line.send("40")
    assert heard(line).startswith("40{")
    return line


def heard(line: websocket.WebSocket) -> str:
    """The next frame as text; empty once the server has closed the line."""
    frame = line.recv()
    return frame if isinstance(frame, str) else frame.decode()


def said_alone(line: websocket.WebSocket, frame: str) -> str:
    """What comes back for a frame; empty if the server closes the line."""
    try:
        line.send(frame)
        return heard(line)
    except (websocket.WebSocketException, OSError):
        return ""
    finally:
        hang_up(line)


def hang_up(line: Any) -> None:
    """Close the socket without a word (the library has no types for it)."""
    line.shutdown()


def goes_on(lesson: Lesson) -> None:
    """Everybody else is served as before."""
    assert lesson.host.say("probe_time")["result"] == "done"
    assert lesson.seats["ada"].say("show_view")["result"] == "done"


def said_since(lesson: Lesson, before: int) -> str:
    return lesson.server.log.read_bytes()[before:].decode(errors="replace")


def test_a_frame_that_is_too_large_ends_its_own_line_only(lesson: Lesson) -> None:
    before = lesson.server.log.stat().st_size
    line = line_to(lesson)
    assert said_alone(line, '421["say",{"id":"m","type":"' + "x" * (2 * LARGEST) + '"}]') == ""
    goes_on(lesson)
    assert "Traceback" not in said_since(lesson, before)


def test_a_message_just_small_enough_is_answered(lesson: Lesson) -> None:
    line = line_to(lesson)
    line.send('421["say",{"id":"m","type":"' + "x" * (LARGEST - 200) + '"}]')
    reply = heard(line)
    assert reply.startswith("431[")
    assert "bad_message" in reply
    hang_up(line)


def test_frames_of_no_protocol_do_no_harm(lesson: Lesson) -> None:
    before, rng = lesson.server.log.stat().st_size, Random(3)  # noqa: S311 - spoiling frames, not secrets
    memory = resident(lesson.server.process.pid)
    good = '421["say",{"id":"m","type":"probe_time"}]'
    for _ in range(300):
        line = line_to(lesson)
        with suppress(websocket.WebSocketException, OSError):
            for _ in range(10):
                send_spoilt(line, rng, good)
        hang_up(line)
    goes_on(lesson)
    assert "Traceback" not in said_since(lesson, before)
    assert resident(lesson.server.process.pid) < memory + 30_000_000


def send_spoilt(line: websocket.WebSocket, rng: Random, good: str) -> None:
    """A good frame with a piece cut out, turned round or overwritten, as text or as bytes."""
    start, end = sorted((rng.randrange(len(good)), rng.randrange(len(good))))
    spoilt = rng.choice(
        (
            good[:start] + good[end:],
            good[:start] + good[start:end][::-1] + good[end:],
            good[:start] + rng.choice(("\x00", "[", "}", '"', "9", "é", "4", "-")) + good[start:],
            rng.randbytes(start).decode("latin-1"),
            str(rng.randrange(10)) * start,
        )
    )
    if rng.random() < 0.2:
        line.send_binary(spoilt.encode())
    else:
        line.send(spoilt)


def resident(process: int) -> int:
    """Memory of a process in bytes (proc(5), the second figure of statm is in pages)."""
    pages = int(Path(f"/proc/{process}/statm").read_text(encoding="ascii").split()[1])
    return pages * os.sysconf("SC_PAGE_SIZE")


def test_another_sites_page_may_not_connect_by_polling_either(lesson: Lesson) -> None:
    address = lesson.server.address.replace("http", "ws", 1)
    with pytest.raises(websocket.WebSocketBadStatusException):
        websocket.create_connection(
            f"{address}/socket.io/?EIO=4&transport=websocket",
            origin="https://elsewhere.example",
            cookie=f"{COOKIE}={lesson.cookie}",
            timeout=5,
        )
