"""A bad line between browsers and server: what is sent comes late, and some of it never.

A proxy over TCP. Bytes before and beside websockets are only late, since TCP itself repeats what
a network loses; single frames of a websocket can be lost for good, which is worse than a network
does and just what outboxes and repeats are there for.
"""

import asyncio
import threading
from collections.abc import Coroutine, Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from random import Random
from typing import Any

from tests.serving import Server

HELD_S = 0.2
END_OF_HEADERS = b"\r\n\r\n"
DATA_FRAMES = (0x1, 0x2)
"""Opcodes of text and binary frames (RFC 6455, section 5.2); the others are the line's own."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Weather:
    """How bad a line is: `delay_s` each way, and the shares of frames that meet with something."""

    delay_s: float = 0.0
    loss: float = 0.0
    doubled: float = 0.0
    """Messages that come twice."""
    swapped: float = 0.0
    """Messages that come after the next one, or `HELD_S` late if none follows."""
    half_closed: float = 0.0
    """Messages that are the last of their direction, which is closed; the other goes on."""
    idle_s: float = 0.0
    """After so long without a byte either way a line is cut, as proxies do; 0 is never."""
    blocks_websockets: bool = False
    """Whether the handshake of a websocket is refused, as by an old proxy."""
    seed: int = 1


@dataclass(slots=True)
class Counts:
    """What has befallen frames."""

    lost: int = 0
    doubled: int = 0
    swapped: int = 0
    half_closed: int = 0
    idle_cuts: int = 0
    refused: int = 0


@dataclass(slots=True)
class Passage:
    """One direction of a line: what is on its way, and a message that is held back behind the next."""

    late: asyncio.Queue[tuple[float, bytes]] = field(default_factory=asyncio.Queue)
    held: list[bytes] = field(default_factory=list)

    def send(self, piece: bytes, due: float) -> None:
        """Put a piece on its way, and behind it what was held back."""
        for each in (piece, *self.held):
            self.late.put_nowait((due, each))
        self.held.clear()

    def release(self, due: float) -> None:
        """Nothing has followed: what was held back goes."""
        for each in self.held:
            self.late.put_nowait((due, each))
        self.held.clear()


@dataclass(slots=True)
class Stream:
    """Cuts one direction of a connection into pieces: the head of HTTP, then frame by frame."""

    waiting: bytes = b""
    is_framed: bool = False

    def pieces(self, data: bytes) -> Iterator[tuple[bytes, bool]]:
        """Whole pieces, each with whether it may be lost."""
        self.waiting += data
        if not self.is_framed:
            head, found, rest = self.waiting.partition(END_OF_HEADERS)
            if not found or not _opens_websocket(head):
                yield self._all(), False
                return
            self.is_framed, self.waiting = True, rest
            yield head + found, False
        while (size := frame_size(self.waiting)) and len(self.waiting) >= size:
            frame, self.waiting = self.waiting[:size], self.waiting[size:]
            yield frame, frame[0] & 0x0F in DATA_FRAMES

    def _all(self) -> bytes:
        everything, self.waiting = self.waiting, b""
        return everything


class BadLine:
    """A proxy to a server on this machine; `address` is what clients are told."""

    def __init__(self, port: int, weather: Weather) -> None:
        """Listen at once, in a thread of its own."""
        self._to_port = port
        self._weather = weather
        self._dice = Random(weather.seed)  # noqa: S311 - weather, no secret
        self._writers: set[asyncio.StreamWriter] = set()
        self._tasks: set[asyncio.Task[None]] = set()
        self.counts = Counts()
        self._loop = asyncio.new_event_loop()
        self._thread = threading.Thread(target=self._loop.run_forever, daemon=True)
        self._thread.start()
        self._server: asyncio.Server = self._run(asyncio.start_server(self._accept, "127.0.0.1", 0))
        self.address = f"http://127.0.0.1:{self._server.sockets[0].getsockname()[1]}"

    def turn(self, weather: Weather) -> None:
        """Other weather, for all that is sent from now on."""
        self._weather = weather

    def cut(self) -> None:
        """Every connection breaks; new ones may be made."""
        self._run(self._close_all())

    def close(self) -> None:
        """No more lines."""
        self._run(self._end_all())
        self._loop.call_soon_threadsafe(self._loop.stop)
        self._thread.join(10)
        self._loop.close()

    def _run(self, work: Coroutine[Any, Any, Any]) -> Any:
        return asyncio.run_coroutine_threadsafe(work, self._loop).result(30)

    async def _accept(self, reader: asyncio.StreamReader, writer: asyncio.StreamWriter) -> None:
        try:
            there, back = await asyncio.open_connection("127.0.0.1", self._to_port)
        except OSError:
            writer.close()  # the server is away: to the client that is a line that breaks
            return
        _ = self._start(self._join(reader, writer, there, back))

    async def _join(
        self,
        reader: asyncio.StreamReader,
        writer: asyncio.StreamWriter,
        there: asyncio.StreamReader,
        back: asyncio.StreamWriter,
    ) -> None:
        ends = {writer, back}
        self._writers |= ends
        heard_at = [self._loop.time()]
        ways = [self._start(self._carry(*way, heard_at)) for way in ((reader, back), (there, writer))]
        watch = self._start(self._cut_when_idle(heard_at, ends))
        try:
            await asyncio.gather(*ways)
        finally:
            watch.cancel()
            self._writers -= ends
            for end in ends:
                end.close()

    def _start(self, work: Coroutine[Any, Any, None]) -> asyncio.Task[None]:
        task = self._loop.create_task(work)
        self._tasks.add(task)
        task.add_done_callback(self._tasks.discard)
        return task

    async def _carry(
        self, source: asyncio.StreamReader, target: asyncio.StreamWriter, heard_at: list[float]
    ) -> None:
        passage, stream = Passage(), Stream()
        delivery = self._start(self._deliver(passage, target))
        try:
            while data := await source.read(65_536):
                heard_at[0] = self._loop.time()
                if self._weather.blocks_websockets and data.startswith(b"GET") and _opens_websocket(data):
                    self.counts.refused += 1
                    # To the server it is a plain request, and what it says to that is a refusal.
                    data = data.replace(b"pgrade: websocket", b"pgrade: nothing--")
                if not all(self._passes(passage, *piece) for piece in stream.pieces(data)):
                    break
        except OSError:
            pass  # a line that breaks is part of the weather
        passage.send(b"", self._due())
        await delivery

    def _passes(self, passage: Passage, piece: bytes, is_frame: bool) -> bool:  # noqa: FBT001 - as `pieces` gives it
        """Send a piece through the weather; False if it was the last of its direction."""
        if not is_frame:
            passage.send(piece, self._due())
            return True
        if self._befalls("lost", self._weather.loss):
            return True
        if not is_message(piece):
            passage.send(piece, self._due())
            return True
        if self._befalls("swapped", self._weather.swapped):
            passage.held.append(piece)
            self._loop.call_later(HELD_S, lambda: passage.release(self._due()))
            return True
        for _ in range(2 if self._befalls("doubled", self._weather.doubled) else 1):
            passage.send(piece, self._due())
        return not self._befalls("half_closed", self._weather.half_closed)

    def _befalls(self, what: str, share: float) -> bool:
        happens = share > 0 and self._dice.random() < share
        setattr(self.counts, what, getattr(self.counts, what) + happens)
        return happens

    def _due(self) -> float:
        return self._loop.time() + self._weather.delay_s

    async def _deliver(self, passage: Passage, target: asyncio.StreamWriter) -> None:
        try:
            while True:
                due, piece = await passage.late.get()
                await asyncio.sleep(max(0.0, due - self._loop.time()))
                if not piece:
                    break
                target.write(piece)
                await target.drain()
            target.write_eof()
        except OSError:
            target.transport.abort()

    async def _cut_when_idle(self, heard_at: list[float], ends: set[asyncio.StreamWriter]) -> None:
        idle_s = self._weather.idle_s or float("inf")
        while (left := heard_at[0] + idle_s - self._loop.time()) > 0:
            await asyncio.sleep(min(left, 3600))
        self.counts.idle_cuts += 1
        for end in ends:
            end.transport.abort()

    async def _close_all(self) -> None:
        for writer in list(self._writers):
            writer.transport.abort()
        self._writers.clear()

    async def _end_all(self) -> None:
        self._server.close()
        await self._close_all()
        tasks = list(self._tasks)
        for task in tasks:
            task.cancel()
        await asyncio.gather(*tasks, return_exceptions=True)
        await asyncio.sleep(0)  # let the sockets of broken lines be closed


@contextmanager
def line_to(server: Server, weather: Weather) -> Iterator[BadLine]:
    """A bad line to a server, for a while."""
    line = BadLine(server.port, weather)
    try:
        yield line
    finally:
        line.close()


def frame_size(data: bytes) -> int:
    """Bytes of the websocket frame that begins here, with its head (RFC 6455, section 5.2); 0 if unknown."""
    if len(data) < 2:
        return 0
    mask = 4 if data[1] & 0x80 else 0
    short = data[1] & 0x7F
    extra = {126: 2, 127: 8}.get(short, 0)
    if len(data) < 2 + extra:
        return 0
    payload = int.from_bytes(data[2 : 2 + extra], "big") if extra else short
    return 2 + extra + mask + payload


def is_message(frame: bytes) -> bool:
    """Whether a frame holds a message or its acknowledgement: packets 42 and 43 (Socket.IO protocol,
    revision 5).
    """
    head = len(frame) - payload_length(frame)
    payload, mask = frame[head : head + 2], frame[head - 4 : head] if frame[1] & 0x80 else bytes(4)
    return bytes(one ^ other for one, other in zip(payload, mask, strict=False)) in (b"42", b"43")


def payload_length(frame: bytes) -> int:
    """Bytes of payload in a whole frame."""
    extra = {126: 2, 127: 8}.get(frame[1] & 0x7F, 0)
    return len(frame) - 2 - extra - (4 if frame[1] & 0x80 else 0)


def _opens_websocket(head: bytes) -> bool:
    return b"upgrade: websocket" in head.lower()
