"""Frames, checked against the websockets library and against the examples of RFC 6455, section 5.7."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from websockets.frames import Frame, Opcode

from quizroom.realtime.wire_frames import (
    BINARY,
    CLOSE,
    NOT_UTF8,
    PING,
    PROTOCOL_ERROR,
    TEXT,
    TOO_BIG,
    BadFrame,
    FrameReader,
    closing_frame,
    frame,
)

MOST = 70_000
PAYLOADS = st.one_of(st.binary(max_size=300), st.sampled_from([b"x" * n for n in (125, 126, 65_535, 65_536)]))


def from_client(payload: bytes, opcode: Opcode = Opcode.TEXT, *, fin: bool = True) -> bytes:
    """As the websockets library masks and writes it."""
    return Frame(opcode, payload, fin=fin).serialize(mask=True)


@given(PAYLOADS)
def test_a_ready_frame_is_what_the_websockets_library_writes(payload: bytes) -> None:
    assert frame(payload) == Frame(Opcode.TEXT, payload).serialize(mask=False)
    assert frame(payload, BINARY) == Frame(Opcode.BINARY, payload).serialize(mask=False)


def test_the_examples_of_the_standard_are_read() -> None:
    masked_hello = bytes.fromhex("818537fa213d7f9f4d5158")
    assert list(FrameReader(most=MOST).take(masked_hello)) == [(TEXT, b"Hello")]
    assert frame(b"Hello") == bytes.fromhex("810548656c6c6f")
    assert closing_frame(1000) == bytes.fromhex("880203e8")


@given(st.lists(PAYLOADS, max_size=4), st.data())
def test_messages_are_read_whole_however_they_are_cut_on_the_way(
    messages: list[bytes], data: st.DataObject
) -> None:
    stream = b"".join(from_client(message, Opcode.BINARY) for message in messages)
    cuts = sorted(data.draw(st.lists(st.integers(0, len(stream)), max_size=6)))
    reader, found, begin = FrameReader(most=MOST), list[tuple[int, bytes]](), 0
    for cut in [*cuts, len(stream)]:
        found += reader.take(stream[begin:cut])
        begin = cut
    assert found == [(BINARY, message) for message in messages]


@given(st.lists(st.binary(min_size=1, max_size=40), min_size=2, max_size=5))
def test_fragments_are_joined_and_a_ping_may_come_between(parts: list[bytes]) -> None:
    first, *middle, last = parts
    stream = from_client(first, Opcode.TEXT, fin=False)
    stream += b"".join(from_client(part, Opcode.CONT, fin=False) for part in middle)
    stream += from_client(b"?", Opcode.PING) + from_client(last, Opcode.CONT)
    assert list(FrameReader(most=MOST).take(stream)) == [(PING, b"?"), (TEXT, b"".join(parts))]


@pytest.mark.parametrize(
    "stream,code",
    [
        (frame(b"not masked"), PROTOCOL_ERROR),
        (b"\xc1" + from_client(b"reserved bit")[1:], PROTOCOL_ERROR),
        (b"\x83" + from_client(b"unknown opcode")[1:], PROTOCOL_ERROR),
        (b"\x09\x80\0\0\0\0", PROTOCOL_ERROR),
        (from_client(b"a", fin=False) + from_client(b"b"), PROTOCOL_ERROR),
        (from_client(b"begins in the middle", Opcode.CONT), PROTOCOL_ERROR),
        (b"\x89\xfe\x00\x80\0\0\0\0" + bytes(128), PROTOCOL_ERROR),
        (from_client(b"x" * (MOST + 1)), TOO_BIG),
        (b"\x81\xff" + (1 << 40).to_bytes(8, "big") + b"\0\0\0\0", TOO_BIG),
        (from_client(b"x" * MOST, fin=False) + from_client(b"x", Opcode.CONT), TOO_BIG),
    ],
)
def test_what_the_standard_forbids_is_refused_with_its_code(stream: bytes, code: int) -> None:
    with pytest.raises(BadFrame) as refused:
        list(FrameReader(most=MOST).take(stream))
    assert refused.value.code == code


def test_the_codes_are_those_of_the_standard() -> None:
    # RFC 6455, section 7.4.1
    assert (PROTOCOL_ERROR, NOT_UTF8, TOO_BIG, CLOSE) == (1002, 1007, 1009, 8)
