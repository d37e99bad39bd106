"""A line to the server with as little in it as can be: Socket.IO frames over a plain websocket, in the
caller's thread.

Frames by the Engine.IO 4 and Socket.IO 5 protocols (socket.io documentation, "The Socket.IO protocol").
"""

import itertools
import json
import time
from collections.abc import Callable
from contextlib import suppress
from typing import Any

import websocket

LineGone = (OSError, websocket.WebSocketException)
"""What a line raises whose server has gone."""


class ThinLine:
    """One connection that asks, and waits for the reply to what it asked; `hear` is given all other
    messages.
    """

    def __init__(
        self,
        port: int,
        cookie: str = "",
        hear: Callable[[str, Any], None] = lambda *_: None,
        open_within_s: float = 10.0,
    ) -> None:
        """Connect. Raises one of `LineGone`."""
        self._hear = hear
        address = f"ws://127.0.0.1:{port}/socket.io/?EIO=4&transport=websocket"
        self._socket: Any = websocket.create_connection(address, timeout=open_within_s, cookie=cookie or None)
        self._numbers = itertools.count()
        try:
            self._socket.recv()
            self._socket.send("40")
            self._wait_for("40", open_within_s)
        except LineGone:
            self.hang_up()
            raise

    def ask(self, message: dict[str, Any], wait_s: float = 10.0) -> dict[str, Any]:
        """Say a message and wait for its reply. Raises `TimeoutError`, or another of `LineGone`."""
        number = next(self._numbers)
        self._socket.send(f'42{number}["say",{json.dumps(message)}]')
        reply: dict[str, Any] = json.loads(self._wait_for(f"43{number}[", wait_s))[0]
        return reply

    def listen(self, seconds: float) -> None:
        """Hear what comes within so long."""
        with suppress(TimeoutError):
            self._wait_for("nothing that is ever sent", seconds)

    def hang_up(self) -> None:
        """End it; the server may have gone before."""
        self._socket.shutdown()

    def _wait_for(self, start: str, wait_s: float = 10.0) -> str:
        deadline = time.monotonic() + wait_s
        while (left := deadline - time.monotonic()) > 0:
            self._socket.settimeout(left)
            try:
                frame = str(self._socket.recv())
            except websocket.WebSocketTimeoutException:
                break
            if not frame:
                raise websocket.WebSocketConnectionClosedException("the server has gone")
            if frame.startswith(start):
                return frame[len(start) - 1 :] if start.endswith("[") else frame
            self._take(frame)
        raise TimeoutError(f"no {start} in {wait_s} s")

    def _take(self, frame: str) -> None:
        if frame == "2":
            self._socket.send("3")
        elif frame.startswith("42["):
            self._hear(*json.loads(frame[2:]))
