"""A client's side of the WebSocket protocol (RFC 6455), no more of it than a load client needs."""

import secrets
from base64 import b64encode
from collections.abc import Iterator

TEXT, CLOSE, PING, PONG = 0x1, 0x8, 0x9, 0xA
DEFLATE_OFFER = "Sec-WebSocket-Extensions: permessage-deflate; client_max_window_bits\r\n"
"""What browsers offer in every handshake (RFC 7692, section 7.1)."""


def handshake(*, port: int, path: str, offers_deflate: bool, cookie: str = "") -> bytes:
    """The request that asks for a websocket (RFC 6455, section 4.1)."""
    key = b64encode(secrets.token_bytes(16)).decode()
    more = (DEFLATE_OFFER if offers_deflate else "") + (f"Cookie: {cookie}\r\n" if cookie else "")
    return (
        f"GET {path} HTTP/1.1\r\nHost: 127.0.0.1:{port}\r\nUpgrade: websocket\r\nConnection: Upgrade\r\n"
        f"Sec-WebSocket-Key: {key}\r\nSec-WebSocket-Version: 13\r\n"
        f"{more}\r\n"
    ).encode()


def masked(payload: bytes, opcode: int = TEXT) -> bytes:
    """One whole frame from a client, masked as section 5.3 demands.

    The mask is zero: it is as valid as any other, the server's work is the same, and the client's is less.
    """
    length = len(payload)
    if length < 126:
        head = bytes((0x80 | opcode, 0x80 | length))
    elif length < 1 << 16:
        head = bytes((0x80 | opcode, 0xFE)) + length.to_bytes(2, "big")
    else:
        head = bytes((0x80 | opcode, 0xFF)) + length.to_bytes(8, "big")
    return head + b"\0\0\0\0" + payload


def frames(data: bytes) -> Iterator[tuple[int, bytes, int]]:
    """The whole unmasked frames at the beginning of `data`: opcode, payload, end."""
    at, end = 0, len(data)
    while end - at >= 2:
        length, begin = data[at + 1], at + 2
        if length == 126:
            length, begin = int.from_bytes(data[at + 2 : at + 4], "big"), at + 4
        elif length == 127:
            length, begin = int.from_bytes(data[at + 2 : at + 10], "big"), at + 10
        if begin + length > end:
            return
        opcode, at = data[at] & 0x0F, begin + length
        yield opcode, data[begin:at], at
