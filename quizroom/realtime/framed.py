"""Broadcasts that are framed once: the same ready bytes go to every websocket of a room.

python-socketio encodes a broadcast once, but queues, wakes, frames and sends it for each client anew.
Here a client whose socket is free gets the ready frame at once; one that is busy gets it queued, in
order; one that does not read for long is let go, and comes back to the newest view. What has no
websocket of this kind (long polling, a poll that was upgraded) is served by the library as ever.

The green threads come from outside (`Green`), so that this file names no async driver.
"""

import re
from collections import deque
from collections.abc import Callable, Sequence
from contextlib import suppress
from typing import Any

from engineio import packet as engine_packet
from engineio.exceptions import SocketIsClosedError, UnknownPacketError
from engineio.socket import Socket as EngineSocket
from socketio import Manager
from socketio import packet as socket_packet

from quizroom.realtime.green import Ear, Green, Wire
from quizroom.realtime.wire_frames import (
    BINARY,
    CLOSE,
    NOT_UTF8,
    PING,
    PONG,
    PROTOCOL_ERROR,
    TEXT,
    BadFrame,
    FrameReader,
    closing_frame,
    frame,
)

MOST_WAITING = 1 << 20
"""Bytes that may wait for a client that does not read, on top of what the system buffers. One message more
is taken, however long."""
LONGEST_WAIT_S = 20.0
LARGEST_READ = 1 << 14
BREATHE_EVERY = 40
"""Counts are no hurry: after so many clients others may go on."""
LEISURELY = frozenset(("tally",))
SHUT_BOTH = 2
EVENT = re.compile(rb'42(\d{1,15})\["(\w+)",')
"""A Socket.IO event in the main namespace that wants a reply, with its number and its name."""


class Line:
    """The way out to one websocket. What is written goes out whole and in order, or the line is dropped."""

    __slots__ = ("_green", "_size", "_waiting", "_wire", "closed")

    def __init__(self, wire: Wire, green: Green) -> None:
        """Nothing waits."""
        self._wire, self._green = wire, green
        self._waiting: deque[bytes | memoryview] = deque()
        self._size = 0
        self.closed = False

    @property
    def waiting(self) -> int:
        """Bytes that wait for a client that does not read."""
        return self._size

    def write(self, ready: bytes) -> None:
        """Send a ready frame now if the socket is free, else after what waits. Never blocks, never raises."""
        if self.closed:
            return
        if self._waiting:
            self._queue(ready)
            return
        try:
            sent = self._wire.send(ready)
        except (BlockingIOError, InterruptedError):
            sent = 0
        except OSError:
            self.drop()
            return
        if sent < len(ready):
            self._queue(memoryview(ready)[sent:])
            self._green.spawn(self._flush)

    def drop(self) -> None:
        """End the connection; the reader wakes up and tidies."""
        self.closed = True
        self._waiting.clear()
        self._size = 0
        with suppress(OSError):
            self._wire.shutdown(SHUT_BOTH)

    def _queue(self, part: bytes | memoryview) -> None:
        if self._size > MOST_WAITING:
            self.drop()
            return
        self._waiting.append(part)
        self._size += len(part)

    def _flush(self) -> None:
        while self._waiting:
            if not self._green.until_writable(self._wire, LONGEST_WAIT_S):
                self.drop()
                return
            self._send_first()

    def _send_first(self) -> None:
        if not self._waiting:
            return  # dropped meanwhile
        first = self._waiting[0]
        try:
            sent = self._wire.send(first)
        except (BlockingIOError, InterruptedError):
            return
        except OSError:
            self.drop()
            return
        self._size -= sent
        if sent < len(first):
            self._waiting[0] = memoryview(first)[sent:]
        else:
            self._waiting.popleft()


class TextPacket(socket_packet.Packet):  # type: ignore[misc] # the library carries no types
    """All that quizroom says is JSON; so no value need be searched for bytes, for every packet anew."""

    uses_binary_events = False


class Outbox:
    """Stands where Engine.IO keeps a queue of packets: what is put in is framed and written at once."""

    __slots__ = ("_line",)

    def __init__(self, line: Line) -> None:
        """Write to this line."""
        self._line = line

    def put(self, packet: Any) -> None:
        """Send a packet; None ends the connection, as in the library's own queue."""
        if packet is None:
            self._line.write(closing_frame(1000))
            self._line.drop()
        else:
            self._line.write(framed(packet))

    def join(self) -> None:
        """Nothing is ever left over."""


class FramedManager(Manager):  # type: ignore[misc] # the library carries no types
    """The library's client manager, which writes ready frames to the websockets that it knows."""

    def __init__(self, green: Green) -> None:
        """Know no websocket yet."""
        super().__init__()
        self._green = green
        self._lines: dict[str, Line] = {}
        self._handlers: dict[str, Callable[[str, bytes], bytes]] = {}

    def take_websockets_over(self) -> Any:
        """The Socket.IO server, whose new websockets are read and written here from now on. Call it once."""
        engine = self.server.eio
        library_s = engine._async["websocket"]  # noqa: SLF001 - the one place that says who serves websockets

        def websocket(handler: Callable[[Any], Any], engine: Any) -> Any:
            socket: EngineSocket = handler.__self__  # type: ignore[attr-defined] # a bound method, always
            if socket.connected:
                return library_s(handler, engine)
            return library_s(lambda driver_s: self._serve(socket, self._green.wire_of(driver_s)), engine)

        engine._async = {**engine._async, "websocket": websocket}  # noqa: SLF001 - see above
        return self.server

    def answer_at_once(self, event: str, handler: Callable[[str, bytes], bytes]) -> None:
        """Give the text of this event of the main namespace straight to `handler`, and back its reply's.

        The library would do the same by way of four packets and of Python's values. What `handler` cannot
        read (it raises ValueError) and what the library would refuse is left to the library.
        """
        self._handlers[event] = handler

    def emit(  # noqa: PLR0917 - the library's own arguments
        self,
        event: str,
        data: Any,
        namespace: str,
        room: Any = None,
        skip_sid: Any = None,
        callback: Any = None,
        to: Any = None,
        **more: Any,
    ) -> None:
        """As the library; a text for everybody in a room is framed once."""
        listeners: Sequence[tuple[str, str]] = tuple(self.get_participants(namespace, to or room))
        arguments = list(data) if isinstance(data, tuple) else [] if data is None else [data]
        packet = self.server.packet_class(socket_packet.EVENT, namespace=namespace, data=[event, *arguments])
        text = packet.encode()
        if callback or skip_sid or not isinstance(text, str):
            super().emit(event, data, namespace, room, skip_sid, callback, to, **more)
            return
        whole = engine_packet.Packet(engine_packet.MESSAGE, text)
        ready = framed(whole)
        for number, (_, sid) in enumerate(listeners, 1):
            line = self._lines.get(sid)
            if line is None:
                self.server._send_eio_packet(sid, whole)  # noqa: SLF001 - as the library's own manager does
            else:
                line.write(ready)
            if event in LEISURELY and number % BREATHE_EVERY == 0:
                self._green.breathe()

    def _serve(self, socket: EngineSocket, wire: Wire) -> None:
        """Read a new websocket until it ends; runs in a green thread of its own."""
        line = Line(wire, self._green)
        before, socket.queue = socket.queue, Outbox(line)
        while not before.empty():
            socket.queue.put(before.get())
        socket.connected = socket.upgraded = True
        self._lines[socket.sid] = line
        try:
            self._read(socket, wire, line)
        finally:
            self._lines.pop(socket.sid, None)
            socket.close(wait=False, abort=True, reason=socket.server.reason.TRANSPORT_CLOSE)
            line.drop()

    def _read(self, socket: EngineSocket, wire: Wire, line: Line) -> None:
        ear = self._green.ear_of(wire)
        try:
            self._read_by(ear, socket, wire, line)
        finally:
            ear.close()

    def _read_by(self, ear: Ear, socket: EngineSocket, wire: Wire, line: Line) -> None:
        reader = FrameReader(most=socket.server.max_http_buffer_size)
        while True:
            ear.wait()
            try:
                data = wire.recv(LARGEST_READ)
                if not data:
                    return
                for opcode, payload in reader.take(data):
                    if not self._heard(socket, line, opcode, payload):
                        return
            except BlockingIOError:
                continue
            except BadFrame as bad:
                line.write(closing_frame(bad.code))
                return
            except (OSError, SocketIsClosedError):
                return

    def _heard(self, socket: EngineSocket, line: Line, opcode: int, payload: bytes) -> bool:
        """Hand a message to Engine.IO; whether the connection goes on."""
        match opcode:
            case _ if opcode == TEXT:
                if not self._answered(socket.sid, line, payload):
                    _receive(socket, _text(payload))
            case _ if opcode == BINARY:
                _receive(socket, payload)
            case _ if opcode == PING:
                line.write(frame(payload, PONG))
            case _ if opcode == CLOSE:
                line.write(frame(payload[:2], CLOSE))
                return False
        return not socket.closed

    def _answered(self, engine_sid: str, line: Line, payload: bytes) -> bool:
        """Answer an event at once, if that can be done."""
        found = EVENT.match(payload)
        handler = self._handlers.get(found[2].decode()) if found else None
        sid = self.sid_from_eio_sid(engine_sid, "/")
        if found is None or handler is None or not self.is_connected(sid, "/"):
            return False
        if not payload.endswith(b"]"):
            return False
        try:
            reply = handler(sid, payload[found.end() : -1])
        except ValueError:
            return False
        line.write(frame(b"43%b[%b]" % (found[1], reply)))
        return True


def framed(packet: Any) -> bytes:
    """The frame of an Engine.IO packet."""
    encoded = packet.encode()
    return frame(encoded.encode()) if isinstance(encoded, str) else frame(bytes(encoded), BINARY)


def _text(payload: bytes) -> str:
    try:
        return payload.decode()
    except UnicodeDecodeError as error:
        raise BadFrame(NOT_UTF8, "text that is no UTF-8") from error


def _receive(socket: EngineSocket, encoded: str | bytes) -> None:
    try:
        packet = engine_packet.Packet(encoded_packet=encoded)
    except ValueError as error:
        raise BadFrame(PROTOCOL_ERROR, "no packet of Engine.IO") from error
    with suppress(UnknownPacketError):
        socket.receive(packet)
