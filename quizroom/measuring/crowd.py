"""Thousands of websockets in one thread, with as little work for each message as Python allows."""

import select
import socket
from collections.abc import Callable, Sequence
from time import perf_counter
from typing import Protocol

from quizroom.measuring.frames import CLOSE, PING, PONG, frames, handshake, masked

MOST_AT_THE_DOOR = 400
"""Connections that wait for their handshake at once: fewer than the backlog of either server."""
LARGEST_READ = 1 << 18
PATIENCE_S = 60.0


class Stalled(Exception):
    """What was waited for did not come in time, or a server hung up; the text says what."""


class Talk(Protocol):
    """How to speak to one kind of server."""

    path: str

    def greeted(self, member: int) -> bytes | None:
        """What a member says once the websocket is open, if the server does not speak first."""

    def heard(self, member: int, payload: bytes, at: float) -> bytes | None:
        """Take a message in, at seconds of `perf_counter`; what is returned is said at once."""


class Crowd:
    """Members by number, each a connection. A member that is dropped is counted, and everything stops."""

    def __init__(self, port: int, talk: Talk) -> None:
        """Nobody is connected yet."""
        self._port, self._talk = port, talk
        self._epoll = select.epoll()
        self._sockets: dict[int, socket.socket] = {}
        self._members: dict[int, int] = {}
        self._greeting: set[int] = set()
        self._rests: dict[int, bytes] = {}
        self.accepted_deflate = 0
        self.dropped = 0

    def connect(self, members: Sequence[int], *, offers_deflate: bool = False, cookie: str = "") -> None:
        """Open a websocket for each."""
        for member in members:
            line = socket.create_connection(("127.0.0.1", self._port), timeout=PATIENCE_S)
            line.setsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY, 1)
            line.sendall(
                handshake(port=self._port, path=self._talk.path, offers_deflate=offers_deflate, cookie=cookie)
            )
            line.settimeout(0)
            self._sockets[member], self._members[line.fileno()] = line, member
            self._greeting.add(member)
            self._epoll.register(line.fileno(), select.EPOLLIN)
            self.hear(0.0)
            self.until(lambda: len(self._greeting) < MOST_AT_THE_DOOR, "handshakes")

    def say(self, member: int, frame: bytes) -> None:
        """Send a ready frame; it is small enough for the socket to take it whole."""
        if self._sockets[member].send(frame) != len(frame):
            raise Stalled(f"member {member} could not send {len(frame)} bytes")

    def until(self, done: Callable[[], bool], what: str, *, patience_s: float = PATIENCE_S) -> None:
        """Listen until something holds.

        Raises:
            Stalled: it did not hold in time.
        """
        give_up_at = perf_counter() + patience_s
        while not done():
            self.hear(0.5)
            if perf_counter() > give_up_at:
                raise Stalled(f"waited {patience_s:.0f} s for {what}")

    def listen(self, seconds: float) -> None:
        """Listen for so long, whatever comes."""
        end = perf_counter() + seconds
        while (left := end - perf_counter()) > 0:
            self.hear(left)

    def hear(self, seconds: float) -> None:
        """Take in what has come; wait at most so long for something."""
        for number, _ in self._epoll.poll(seconds, 512):
            member = self._members[number]
            try:
                data = self._sockets[member].recv(LARGEST_READ)
            except BlockingIOError:
                continue
            except OSError:
                data = b""
            self._take(member, data, perf_counter())

    def hang_up(self) -> None:
        """Close every connection."""
        for line in self._sockets.values():
            line.close()
        self._epoll.close()
        self._sockets.clear()

    def _take(self, member: int, data: bytes, at: float) -> None:
        if not data:
            self.dropped += 1
            raise Stalled(f"the server dropped member {member}")
        if rest := self._rests.pop(member, b""):
            data = rest + data
        if member in self._greeting:
            data = self._open(member, data)
        begin = 0
        for opcode, payload, end in frames(data):
            self._answer(member, opcode, payload, at)
            begin = end
        if begin < len(data):
            self._rests[member] = data[begin:]

    def _answer(self, member: int, opcode: int, payload: bytes, at: float) -> None:
        if opcode == PING:
            self.say(member, masked(payload, PONG))
        elif opcode == CLOSE:
            self.dropped += 1
            raise Stalled(f"the server closed the line of member {member}")
        elif (said := self._talk.heard(member, payload, at)) is not None:
            self.say(member, said)

    def _open(self, member: int, data: bytes) -> bytes:
        head, gap, rest = data.partition(b"\r\n\r\n")
        if not gap:
            self._rests[member] = data
            return b""
        if not head.startswith(b"HTTP/1.1 101"):
            raise Stalled(f"no websocket for member {member}: {head[:80]!r}")
        self.accepted_deflate += b"permessage-deflate" in head
        self._greeting.discard(member)
        first = self._talk.greeted(member)
        if first is not None:
            self.say(member, first)
        return rest
