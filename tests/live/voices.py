"""Browsers without pages: python-socketio clients that speak the wire to a real server."""

import itertools
import threading
import time
from collections.abc import Callable
from http.client import HTTPConnection
from http.cookies import SimpleCookie
from typing import Any
from urllib.parse import urlsplit

import socketio

from quizroom.pages.host_entry import COOKIE
from quizroom.room.folding import replay
from quizroom.room.state import Room
from quizroom.storage.database import open_database
from quizroom.storage.event_log import SqlEventLog
from tests.live.locked_tls import locked_context
from tests.serving import Server

Heard = tuple[str, Any]
EVENTS = ("public", "own", "desk", "tally")
_numbers = itertools.count(1)


class Voice:
    """One connection, and all that it has heard."""

    def __init__(self, server: Server, **headers: str) -> None:
        """Connect by websocket, with these headers."""
        self.heard: list[Heard] = []
        self._more = threading.Condition()
        safe = {"sslopt": {"context": locked_context()}} if server.address.startswith("https") else {}
        self._client: Any = socketio.Client(reconnection=False, websocket_extra_options=safe)
        for event in EVENTS:
            self._client.on(event, lambda data, event=event: self._hear(event, data))
        self._client.connect(server.address, headers=headers, transports=["websocket"], wait_timeout=30)
        self._socket: Any = self._client.eio.ws

    def say(self, kind: str, **fields: Any) -> dict[str, Any]:
        """Say a message with an id of its own, and wait for the reply."""
        return self.say_raw({"id": f"m{next(_numbers)}", "type": kind, **fields})

    def say_raw(self, message: Any, *, wait_s: float = 10.0) -> dict[str, Any]:
        """Say anything at all, and wait for the reply."""
        reply: dict[str, Any] = self._client.call("say", message, timeout=wait_s)
        self._hear("reply", reply)
        return reply

    def done(self, kind: str, **fields: Any) -> dict[str, Any]:
        """Say a message that must be carried out."""
        reply = self.say(kind, **fields)
        assert reply["result"] == "done", reply
        return reply

    def last(self, event: str, fits: Callable[[Any], bool] = bool, *, wait_s: float = 10.0) -> Any:
        """The newest that was heard of an event and fits; waits for it."""
        end = time.monotonic() + wait_s
        with self._more:
            while True:
                found = [data for name, data in self.heard if name == event and fits(data)]
                if found:
                    return found[-1]
                if not self._more.wait(max(0.0, end - time.monotonic())) and time.monotonic() >= end:
                    raise AssertionError(f"no such {event} in {wait_s} s; heard: {self.heard[-3:]}")

    def is_connected(self) -> bool:
        """Whether the line holds."""
        return bool(self._client.connected)

    def hang_up(self) -> None:
        """End the connection, as a closed laptop does; also one whose server is gone."""
        self._client.disconnect()
        self._socket.close()

    def _hear(self, event: str, data: Any) -> None:
        with self._more:
            self.heard.append((event, data))
            self._more.notify_all()


def host_cookie(desk_link: str) -> str:
    """The host's cookie for a one-time link; empty if the link is no good."""
    parts = urlsplit(desk_link)
    connection = HTTPConnection(parts.netloc, timeout=10)
    try:
        connection.request("GET", parts.path)
        cookie = SimpleCookie(connection.getresponse().headers.get("Set-Cookie", ""))
    finally:
        connection.close()
    return cookie[COOKIE].value if COOKIE in cookie else ""


def host_voice(server: Server, cookie: str = "") -> Voice:
    """A connection that proves a host, by this cookie or a fresh link's."""
    return Voice(server, Cookie=f"{COOKIE}={cookie or host_cookie(server.desk_link)}")


def logged_room(server: Server, room: str) -> Room:
    """What a reader with nothing but the database makes of the committed log."""
    engine = open_database(server.database_url)
    try:
        folded = replay(SqlEventLog(engine).read(room))
    finally:
        engine.dispose()
    assert folded is not None
    return folded
