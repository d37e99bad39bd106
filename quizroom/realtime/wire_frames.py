"""Frames of the WebSocket protocol as a server writes and reads them (RFC 6455, section 5). Pure."""

from collections.abc import Iterator
from dataclasses import dataclass

CONTINUED, TEXT, BINARY, CLOSE, PING, PONG = 0x0, 0x1, 0x2, 0x8, 0x9, 0xA
KNOWN = frozenset((CONTINUED, TEXT, BINARY, CLOSE, PING, PONG))
PROTOCOL_ERROR, NOT_UTF8, TOO_BIG = 1002, 1007, 1009
"""Why a connection is closed (RFC 6455, section 7.4.1)."""


class BadFrame(Exception):
    """The client breaks the protocol; `code` says how."""

    def __init__(self, code: int, why: str) -> None:
        """Remember the code for the closing frame."""
        super().__init__(why)
        self.code = code


def frame(payload: bytes, opcode: int = TEXT) -> bytes:
    """One whole unmasked frame, ready for any number of clients."""
    length = len(payload)
    if length < 126:
        return bytes((0x80 | opcode, length)) + payload
    if length < 1 << 16:
        return bytes((0x80 | opcode, 126)) + length.to_bytes(2, "big") + payload
    return bytes((0x80 | opcode, 127)) + length.to_bytes(8, "big") + payload


def closing_frame(code: int) -> bytes:
    """The frame that says why the server ends the connection."""
    return frame(code.to_bytes(2, "big"), CLOSE)


@dataclass(slots=True)
class FrameReader:
    """Puts messages together from what a client sends; holds no more than one message of `most` bytes."""

    most: int
    _rest: bytes = b""
    _opcode: int = CONTINUED
    _parts: bytes = b""

    def take(self, data: bytes) -> Iterator[tuple[int, bytes]]:
        """The messages that are whole now, each with the opcode that it began with.

        Raises:
            BadFrame: what came is against the protocol, or too long.
        """
        data = self._rest + data if self._rest else data
        self._rest = data
        at = 0
        while (found := self._frame(data, at)) is not None:
            head, opcode, payload, at = found
            self._rest = data[at:]
            if opcode & 0x8:
                yield opcode, payload
            elif (message := self._whole(opcode, payload, is_last=bool(head & 0x80))) is not None:
                yield message

    def _frame(self, data: bytes, at: int) -> tuple[int, int, bytes, int] | None:
        """First byte, opcode, payload and end of the frame at `at`; None if it is not all there."""
        if len(data) - at < 2:
            return None
        head, length, begin = data[at], data[at + 1] & 0x7F, at + 2
        opcode = head & 0x0F
        _refuse_misshapen(head, data[at + 1], length)
        if length >= 126:
            size = 2 if length == 126 else 8
            length = int.from_bytes(data[begin : begin + size], "big")
            begin += size
        if len(data) >= begin and length > self.most:
            raise BadFrame(TOO_BIG, f"a frame of {length} bytes")
        end = begin + 4 + length
        if len(data) < end:
            return None
        return head, opcode, unmasked(data[begin : begin + 4], data[begin + 4 : end]), end

    def _whole(self, opcode: int, payload: bytes, *, is_last: bool) -> tuple[int, bytes] | None:
        if bool(opcode) == bool(self._opcode):
            raise BadFrame(PROTOCOL_ERROR, "fragments out of turn")
        if opcode and is_last:
            return opcode, payload
        self._opcode, self._parts = self._opcode or opcode, self._parts + payload
        if len(self._parts) > self.most:
            raise BadFrame(TOO_BIG, "a message in fragments")
        if not is_last:
            return None
        message = self._opcode, self._parts
        self._opcode, self._parts = CONTINUED, b""
        return message


def unmasked(mask: bytes, payload: bytes) -> bytes:
    """The payload as it was before the client masked it: byte i against mask byte i mod 4 (section 5.3)."""
    length = len(payload)
    key = (mask * (length // 4 + 1))[:length]
    return (int.from_bytes(payload, "little") ^ int.from_bytes(key, "little")).to_bytes(length, "little")


def _refuse_misshapen(head: int, second: int, length: int) -> None:
    if head & 0x70:
        raise BadFrame(PROTOCOL_ERROR, "a reserved bit is set, and no extension was agreed on")
    if not second & 0x80:
        raise BadFrame(PROTOCOL_ERROR, "a client's frame must be masked")
    if head & 0x0F not in KNOWN:
        raise BadFrame(PROTOCOL_ERROR, "an unknown opcode")
    if head & 0x08 and (length > 125 or not head & 0x80):
        raise BadFrame(PROTOCOL_ERROR, "a control frame that is long or in fragments")
