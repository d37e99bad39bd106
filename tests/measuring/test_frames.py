"""The load client's frames, checked against the websockets library."""

from hypothesis import given
from hypothesis import strategies as st
from websockets.frames import Frame, Opcode
from websockets.http11 import Request
from websockets.server import ServerProtocol

from quizroom.measuring.frames import frames, handshake, masked

PAYLOADS = st.one_of(st.binary(max_size=300), st.sampled_from([b"x" * n for n in (125, 126, 65_535, 65_536)]))


@given(st.lists(PAYLOADS, max_size=4))
def test_a_server_s_frames_are_taken_apart(payloads: list[bytes]) -> None:
    stream = b"".join(Frame(Opcode.BINARY, payload).serialize(mask=False) for payload in payloads)
    found = list(frames(stream))
    assert [payload for _, payload, _ in found] == payloads
    assert [end for *_, end in found][-1:] == [len(stream)][: len(payloads)]


@given(PAYLOADS, st.integers(0, 400))
def test_half_a_frame_waits_for_the_rest(payload: bytes, kept: int) -> None:
    whole = Frame(Opcode.TEXT, payload).serialize(mask=False)
    assert list(frames(whole[: min(kept, len(whole) - 1)])) == []


@given(PAYLOADS)
def test_a_server_takes_the_handshake_and_the_masked_frames(payload: bytes) -> None:
    server = ServerProtocol()
    server.receive_data(handshake(port=1, path="/x", offers_deflate=True, cookie="a=b"))
    (request,) = server.events_received()
    assert isinstance(request, Request)
    assert request.headers["Cookie"] == "a=b"
    assert "permessage-deflate" in request.headers["Sec-WebSocket-Extensions"]
    server.send_response(server.accept(request))
    server.receive_data(masked(payload, 2))
    (said,) = server.events_received()
    assert isinstance(said, Frame)
    assert bytes(said.data) == payload
