"""A bad line between browsers and server: what is sent comes late, and some of it never.

A proxy over TCP. Bytes before and beside websockets are only late, since TCP itself repeats what
a network loses; single frames of a websocket can be lost for good, which is worse than a network
does and just what outboxes and repeats are there for.
"""

import asyncio
import threading
from collections.abc import Coroutine, Iterator
from dataclasses import dataclass
from random import Random
from typing import Any

END_OF_HEADERS = b"\r\n\r\n"
DATA_FRAMES = (0x1, 0x2)
"""Opcodes of text and binary frames (RFC 6455, section 5.2); the others are the line's own."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Weather:
    """How bad a line is: `delay_s` each way, and the share of frames that are lost."""

    delay_s: float = 0.0
    loss: float = 0.0
    seed: int = 1


@dataclass(slots=True)
class Counts:
    """How many frames have passed, and how many were lost."""

    passed: int = 0
    lost: int = 0


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
        self._writers |= {writer, back}
        for source, target in ((reader, back), (there, writer)):
            _ = self._start(self._carry(source, target))

    def _start(self, work: Coroutine[Any, Any, None]) -> asyncio.Task[None]:
        task = self._loop.create_task(work)
        self._tasks.add(task)
        task.add_done_callback(self._tasks.discard)
        return task

    async def _carry(self, source: asyncio.StreamReader, target: asyncio.StreamWriter) -> None:
        late: asyncio.Queue[tuple[float, bytes]] = asyncio.Queue()
        delivery = self._start(self._deliver(late, target))
        stream = Stream()
        try:
            while data := await source.read(65_536):
                for piece, may_be_lost in stream.pieces(data):
                    if not (may_be_lost and self._is_lost()):
                        late.put_nowait((self._loop.time() + self._weather.delay_s, piece))
        except OSError:
            pass  # a line that breaks is part of the weather
        late.put_nowait((self._loop.time() + self._weather.delay_s, b""))
        await delivery

    async def _deliver(self, late: asyncio.Queue[tuple[float, bytes]], target: asyncio.StreamWriter) -> None:
        try:
            while True:
                due, piece = await late.get()
                await asyncio.sleep(max(0.0, due - self._loop.time()))
                if not piece:
                    break
                target.write(piece)
                await target.drain()
        except OSError:
            pass
        self._writers.discard(target)
        target.close()

    def _is_lost(self) -> bool:
        lost = self._dice.random() < self._weather.loss
        self.counts.lost += lost
        self.counts.passed += not lost
        return lost

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


def _opens_websocket(head: bytes) -> bool:
    return b"upgrade: websocket" in head.lower()
