"""Ready frames: the same bytes in the same order as the library's own way, and nobody is waited for."""

import json
import socket
from collections import deque
from collections.abc import Callable
from typing import Any

import pytest
import socketio
from hypothesis import given
from hypothesis import strategies as st
from websockets.frames import Frame, Opcode

from quizroom.measuring.frames import frames
from quizroom.realtime import wire_json
from quizroom.realtime.framed import BREATHE_EVERY, MOST_WAITING, FramedManager, Line, TextPacket
from quizroom.realtime.green import Green, Wire
from quizroom.realtime.wire_frames import CLOSE, frame


class SlowWire:
    """A socket whose other end reads as much as it is told to."""

    def __init__(self, *, room: int = 1 << 30) -> None:
        """Take `room` bytes at once."""
        self.room, self.sent, self.is_shut, self.is_broken = room, b"", False, False
        self.coming: deque[bytes] = deque()

    def send(self, data: bytes | memoryview) -> int:
        if self.is_broken:
            raise BrokenPipeError
        if not self.room:
            raise BlockingIOError
        taken = bytes(data[: self.room])
        self.sent += taken
        self.room -= len(taken)
        return len(taken)

    def recv(self, most: int) -> bytes:
        return self.coming.popleft()[:most] if self.coming else b""

    def shutdown(self, how: int) -> None:
        self.is_shut = True


class NoEar:
    """Everything that will ever come is there already."""

    def wait(self) -> None:
        """Return at once."""

    def close(self) -> None:
        """There is nothing to end."""


class Threads:
    """Green threads that run when the test wants them to; whoever waits gets `more` room."""

    def __init__(self, *, more: int) -> None:
        """Give `more` bytes of room at each wait; 0 lets the wait end in vain."""
        self.more, self.started, self.breaths = more, list[Callable[[], None]](), 0

    def green(self, wire: SlowWire) -> Green:
        return Green(
            wire_of=lambda it: it,
            ear_of=lambda it: NoEar(),
            until_writable=self._until_writable,
            spawn=self.started.append,
            breathe=self._breathe,
        )

    def run(self) -> None:
        while self.started:
            self.started.pop()()

    def _until_writable(self, wire: Wire, seconds: float) -> bool:
        assert isinstance(wire, SlowWire)
        wire.room += self.more
        return self.more > 0

    def _breathe(self) -> None:
        self.breaths += 1


@given(st.lists(st.binary(min_size=1, max_size=50), max_size=20), st.integers(0, 200), st.integers(1, 70))
def test_a_slow_client_gets_everything_whole_and_in_order(writes: list[bytes], room: int, more: int) -> None:
    wire, threads = SlowWire(room=room), Threads(more=more)
    line = Line(wire, threads.green(wire))
    for ready in writes:
        line.write(ready)
    threads.run()
    assert wire.sent == b"".join(writes)
    assert not wire.is_shut


def test_a_client_that_never_reads_is_let_go_and_holds_no_memory() -> None:
    wire, threads = SlowWire(room=10), Threads(more=0)
    line = Line(wire, threads.green(wire))
    for _ in range(50):
        line.write(b"x" * (MOST_WAITING // 10))
    assert wire.is_shut
    assert line.closed
    assert line.waiting == 0
    assert wire.sent == b"x" * 10


def test_a_client_that_does_not_read_in_time_is_let_go() -> None:
    wire, threads = SlowWire(room=3), Threads(more=0)
    line = Line(wire, threads.green(wire))
    line.write(b"too long for it")
    assert not wire.is_shut
    threads.run()
    assert wire.is_shut


def test_a_closed_socket_harms_nobody() -> None:
    wire, threads = SlowWire(), Threads(more=1)
    wire.is_broken = True
    line = Line(wire, threads.green(wire))
    line.write(b"anything")
    line.write(b"more")
    assert line.closed
    assert wire.sent == b""


class Driver:
    """Stands for the async driver's websockets: hands the handler a wire."""

    def __init__(self) -> None:
        """No websocket yet."""
        self.wire = SlowWire()

    def websocket(self, handler: Callable[[Any], Any], engine: Any) -> Callable[[Any, Any], Any]:
        return lambda environ, start_response: handler(self.wire)


def serving(manager: Any = None) -> tuple[socketio.Server, Driver]:
    """A Socket.IO server without a network, framed if a manager is given."""
    server = socketio.Server(
        async_mode="threading",
        client_manager=manager,
        json=wire_json,
        serializer=TextPacket,
        async_handlers=False,
    )
    driver = Driver()
    server.eio._async = {**server.eio._async, "websocket": driver.websocket}  # noqa: SLF001 - the driver's place
    return server, driver


def come_and_go(server: socketio.Server, driver: Driver, *said: bytes) -> bytes:
    """A client connects, says this, and hangs up; everything that it was sent."""
    driver.wire = SlowWire()
    driver.wire.coming.extend(said)
    environ = {
        "REQUEST_METHOD": "GET",
        "QUERY_STRING": "EIO=4&transport=websocket",
        "HTTP_CONNECTION": "Upgrade",
        "HTTP_UPGRADE": "websocket",
        "PATH_INFO": "/socket.io/",
    }
    server.handle_request(environ, lambda *_: None)
    return driver.wire.sent


def client(text: str, opcode: Opcode = Opcode.TEXT) -> bytes:
    return Frame(opcode, text.encode()).serialize(mask=True)


def messages(sent: bytes) -> list[bytes]:
    """Payloads of what a client was sent."""
    return [payload for _, payload, _ in frames(sent)]


def framed_server() -> tuple[socketio.Server, Driver, FramedManager]:
    threads = Threads(more=1)
    manager = FramedManager(threads.green(SlowWire()))
    server, driver = serving(manager)
    manager.take_websockets_over()
    return server, driver, manager


@pytest.mark.parametrize("data", [{"a": 1}, [1, "ä"], "text", None, ("two", {"things": True}), "x" * 70_000])
def test_a_broadcast_is_the_same_text_as_by_the_library_s_own_way(data: Any) -> None:
    def heard(server: socketio.Server, driver: Driver) -> list[bytes]:
        server.on("connect", lambda sid, environ: server.enter_room(sid, "hall"))
        server.on("speak", lambda sid: server.emit("news", data, to="hall"))
        return messages(come_and_go(server, driver, client("40"), client('42["speak"]')))

    framed, driver, _ = framed_server()
    ours = heard(framed, driver)
    plain = socketio.Server(async_mode="threading", json=wire_json, async_handlers=False)
    packets = []
    plain.eio.send_packet = lambda sid, packet: packets.append(packet.encode())
    plain.manager.basic_enter_room("me", "/", None, eio_sid="engine")
    plain.manager.basic_enter_room("me", "/", "hall")
    plain.emit("news", data, to="hall")
    assert packets[0].encode() in ours


@pytest.mark.parametrize(
    "event, text",
    [
        ('["say",{"x":"ä"}]', '{"x":"ä"}'),
        ('["say",{"x":"ä"},"more"]', '{"x":"ä"},"more"'),
        ('["say", {"x": "ä"} ]', ' {"x": "ä"} '),
    ],
)
def test_an_event_is_answered_with_its_number_and_by_the_same_bytes_as_by_the_library(
    event: str, text: str
) -> None:
    def heard(*, at_once: bool) -> list[bytes]:
        server, driver, manager = framed_server()
        server.on("connect", lambda sid, environ: None)
        server.on("say", lambda sid, said, *_more: {"you said": said})
        if at_once:
            manager.answer_at_once("say", by_text)
        return messages(come_and_go(server, driver, client("40"), client(f"4217{event}")))

    def by_text(_sid: str, text: bytes) -> bytes:
        texts.append(text)
        return json.dumps({"you said": json.loads(text)}, separators=(",", ":"), ensure_ascii=False).encode()

    texts = list[bytes]()
    answered = '4317[{"you said":{"x":"ä"}}]'.encode()
    assert heard(at_once=True)[2:] == heard(at_once=False)[2:]
    assert answered in heard(at_once=True)
    assert texts[0] == text.encode()


def test_who_has_not_connected_is_not_answered_at_once() -> None:
    server, driver, manager = framed_server()
    asked = list[bytes]()

    def answer(_sid: str, said: bytes) -> bytes:
        asked.append(said)
        return said

    manager.answer_at_once("say", answer)
    come_and_go(server, driver, client('421["say",1]'))
    assert asked == []


def test_a_ping_is_answered_and_a_close_is_returned() -> None:
    server, driver, _ = framed_server()
    sent = come_and_go(
        server, driver, client("hi", Opcode.PING), Frame(Opcode.CLOSE, b"\x03\xe8").serialize(mask=True)
    )
    assert frame(b"hi", 0xA) in sent
    assert sent.endswith(frame(b"\x03\xe8", CLOSE))
    assert server.eio.sockets == {}


@pytest.mark.parametrize(
    "bad", [frame(b"not masked"), Frame(Opcode.TEXT, b"\xff").serialize(mask=True), client("9x")]
)
def test_a_broken_frame_ends_its_own_connection_with_a_code(bad: bytes) -> None:
    server, driver, _ = framed_server()
    gone = list[str]()
    server.on("connect", lambda sid, environ: None)
    server.on("disconnect", lambda sid, reason: gone.append(sid))
    sent = come_and_go(server, driver, client("40"), bad)
    assert len(gone) == 1
    assert driver.wire.is_shut
    assert sent


def test_counts_let_others_go_on_in_between_and_views_do_not() -> None:
    threads = Threads(more=1)
    manager = FramedManager(threads.green(SlowWire()))
    server, _ = serving(manager)
    server.eio.send_packet = lambda sid, packet: None
    for number in range(250):
        manager.basic_enter_room(f"s{number}", "/", None, eio_sid=f"e{number}")
        manager.basic_enter_room(f"s{number}", "/", "hall")
    server.emit("public", {}, to="hall")
    assert threads.breaths == 0
    server.emit("tally", {}, to="hall")
    assert threads.breaths == 250 // BREATHE_EVERY > 0


def test_a_real_socket_pair_carries_it() -> None:
    near, far = socket.socketpair()
    near.settimeout(0)
    threads = Threads(more=1)
    Line(near, threads.green(SlowWire())).write(frame(b"hello"))
    assert far.recv(100) == frame(b"hello")
    near.close()
    far.close()
