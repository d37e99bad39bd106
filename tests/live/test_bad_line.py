"""The bad line itself: it is as bad as it says, and no worse."""

import time
from collections.abc import Iterator
from dataclasses import replace

import pytest
from websocket import ABNF

from tests.live.bad_line import BadLine, Stream, Weather, frame_size
from tests.live.voices import Voice
from tests.serving import Server


@pytest.mark.parametrize("size", [0, 1, 125, 126, 65_535, 65_536])
@pytest.mark.parametrize("masked", [0, 1])
def test_frames_are_measured_as_a_websocket_library_makes_them(size: int, masked: int) -> None:
    """Against websocket-client, which writes frames by RFC 6455."""
    frame = ABNF(1, 0, 0, 0, ABNF.OPCODE_TEXT, masked, b"x" * size).format()
    assert frame_size(frame + b"more") == len(frame)
    assert frame_size(frame[:1]) == 0


def test_a_stream_is_cut_frame_by_frame_however_it_arrives() -> None:
    head = b"HTTP/1.1 101 Switching Protocols\r\nUpgrade: websocket\r\n\r\n"
    frames = [
        ABNF(1, 0, 0, 0, opcode, 0, b"x" * 300).format() for opcode in (ABNF.OPCODE_TEXT, ABNF.OPCODE_PING)
    ]
    stream = Stream()
    found: list[tuple[bytes, bool]] = []
    found += stream.pieces(head + frames[0][:5])
    found += stream.pieces(frames[0][5:] + frames[1])
    assert found == [(head, False), (frames[0], True), (frames[1], False)]


@pytest.fixture
def late(server: Server) -> Iterator[BadLine]:
    """A line with 200 ms each way."""
    line = BadLine(server.port, Weather(delay_s=0.2))
    yield line
    line.close()


def test_everything_is_late_by_the_delay_and_a_cut_breaks_all_lines(server: Server, late: BadLine) -> None:
    voice = Voice(replace(server, address=late.address))
    began = time.perf_counter()
    voice.done("probe_time")
    assert 0.4 <= time.perf_counter() - began < 2.0
    late.cut()
    end = time.monotonic() + 10
    while voice.is_connected() and time.monotonic() < end:
        time.sleep(0.01)
    assert not voice.is_connected()
    Voice(replace(server, address=late.address)).hang_up()
