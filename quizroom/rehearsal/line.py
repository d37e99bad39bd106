"""A simulated browser's connection: whatever it says is said again until it is answered."""

import logging
import secrets
import time
from collections.abc import Callable
from dataclasses import asdict
from typing import Any

import socketio
from socketio.exceptions import SocketIOError

from quizroom.protocol.messages import ClientMessage
from quizroom.rehearsal.entry import CannotRehearse

PATIENCE_S = 60.0
"""How long a server may be away (killed, started again) before the rehearsal gives up."""
REPLY_WAIT_S = 5.0
AGAIN_S = 0.3

Reply = dict[str, Any]
Hear = Callable[[str, Any], None]


class Line:
    """One connection by websocket. After a break it takes its place again with its greeting."""

    def __init__(self, address: str, *, cookie: str = "", hear: Hear = lambda _event, _data: None) -> None:
        """Connect later, when there is something to say; `hear` is told what the server sends."""
        self._address = address
        self._headers = {"Cookie": cookie} if cookie else {}
        self._hear = hear
        self._client: Any = None
        self._is_greeted = False
        self.greeting: ClientMessage | None = None

    def say(self, message: ClientMessage) -> Reply:
        """Say it until it is done or refused; the id stays the same, so that a repeat is harmless.

        Raises:
            CannotRehearse: nobody answered for a minute.
        """
        give_up_at = time.monotonic() + PATIENCE_S
        reply: Reply | None = None
        while time.monotonic() < give_up_at:
            reply = self._try(message)
            if reply is not None and reply["result"] != "failed" and reply["code"] != "slow_down":
                return reply
            time.sleep(AGAIN_S)
        raise CannotRehearse(self._why_not(reply))

    def close(self) -> None:
        """Hang up."""
        if self._client is not None:
            self._client.disconnect()
            self._client = None

    def _why_not(self, last: Reply | None) -> str:
        if last is not None:
            return f"The server at {self._address} cannot do this, try as it may. Its own log says why."
        return (
            f"The server at {self._address} has not answered for a minute. "
            "Start it again: the review is where it was, and can be played on at the desk."
        )

    def _try(self, message: ClientMessage) -> Reply | None:
        try:
            if self._client is None or not self._client.connected:
                self._connect()
            if self.greeting is not None and not self._is_greeted:
                self._take_in(self._call(self.greeting))
                self._is_greeted = True
            return self._take_in(self._call(message))
        except SocketIOError:
            return None

    def _connect(self) -> None:
        self.close()
        self._is_greeted = False
        # No reconnection by itself: nobody listens between two things to say.
        quiet = _silent()
        client = socketio.Client(reconnection=False, handle_sigint=False, logger=quiet, engineio_logger=quiet)
        client.on("*", self._hear)
        client.connect(
            self._address, headers=self._headers, transports=["websocket"], wait_timeout=REPLY_WAIT_S
        )
        self._client = client

    def _call(self, message: ClientMessage) -> Reply:
        reply: Reply = self._client.call("say", asdict(message), timeout=REPLY_WAIT_S)
        return reply

    def _take_in(self, reply: Reply) -> Reply:
        for event in ("public", "own", "desk"):
            if reply[event] is not None:
                self._hear(event, reply[event])
        return reply


def new_message_id() -> str:
    """An id for one message."""
    return secrets.token_hex(16)


def _silent() -> logging.Logger:
    logger = logging.getLogger("quizroom.rehearsal.line")
    logger.setLevel(logging.CRITICAL)
    return logger
