"""An ear of the real driver: it hears every message, stays with the hub, and lets a busy reader be."""

import socket
from collections.abc import Callable, Iterator

import eventlet
import eventlet.hubs
import pytest

from quizroom.realtime.green import Ear, green_of

LIMIT_S = 10.0


@pytest.fixture
def wires() -> Iterator[tuple[socket.socket, socket.socket]]:
    """A server's and a client's end."""
    ours, theirs = socket.socketpair()
    ours.settimeout(0)
    yield ours, theirs
    ours.close()
    theirs.close()


def is_watched(wire: socket.socket) -> bool:
    hub = eventlet.hubs.get_hub()
    return wire.fileno() in hub.listeners[hub.READ]


def settle() -> None:
    """Let the hub look at its sockets, several times."""
    for _ in range(3):
        eventlet.sleep(0)


def finished(work: Callable[[], object]) -> object:
    with eventlet.Timeout(LIMIT_S):
        return eventlet.spawn(work).wait()


def ear_of(wire: socket.socket) -> Ear:
    return green_of(eventlet).ear_of(wire)


def test_messages_are_heard_one_after_another_and_the_hub_goes_on_watching(
    wires: tuple[socket.socket, socket.socket],
) -> None:
    ours, theirs = wires
    ear, heard, watched = ear_of(ours), list[bytes](), list[bool]()

    def read() -> None:
        for _ in range(3):
            ear.wait()
            heard.append(ours.recv(100))
            watched.append(is_watched(ours))
        ear.close()

    reader = eventlet.spawn(read)
    for word in (b"deltoid", b"soleus", b"psoas"):
        settle()
        theirs.send(word)
    with eventlet.Timeout(LIMIT_S):
        reader.wait()
    assert (heard, watched) == ([b"deltoid", b"soleus", b"psoas"], [True] * 3)
    assert not is_watched(ours)


def test_what_comes_while_the_reader_is_busy_is_neither_lost_nor_asked_for_again_and_again(
    wires: tuple[socket.socket, socket.socket],
) -> None:
    ours, theirs = wires
    ear = ear_of(ours)

    def read() -> tuple[bool, bytes]:
        theirs.send(b"first")
        ear.wait()
        ours.recv(100)
        theirs.send(b"second")
        settle()  # busy: it waits for something else
        still = is_watched(ours)
        ear.wait()
        return still, ours.recv(100)

    assert finished(read) == (False, b"second")
    ear.close()


def test_the_end_of_a_wire_wakes_who_waits(wires: tuple[socket.socket, socket.socket]) -> None:
    ours, theirs = wires
    ear = ear_of(ours)

    def read() -> bytes:
        ear.wait()
        return ours.recv(100)

    reader = eventlet.spawn(read)
    settle()
    theirs.shutdown(socket.SHUT_RDWR)
    with eventlet.Timeout(LIMIT_S):
        assert reader.wait() == b""
    ear.close()
    ear.close()
    assert not is_watched(ours)
