"""A line to the server with as little in it as can be: Socket.IO frames over a plain websocket, in the
caller's thread.

Frames by the Engine.IO 4 and Socket.IO 5 protocols (socket.io documentation, "The Socket.IO protocol").
"""

import itertools
import json
import time
from typing import Any

import websocket

LineGone = (OSError, websocket.WebSocketException)
"""What a line raises whose server has gone."""


class ThinLine:
    """One connection that asks, and waits for the reply to what it asked."""

    def __init__(self, port: int, cookie: str = "") -> None:
        """Connect. Raises one of `LineGone`."""
        address = f"ws://127.0.0.1:{port}/socket.io/?EIO=4&transport=websocket"
        self._socket: Any = websocket.create_connection(address, timeout=10, cookie=cookie or None)
        self._numbers = itertools.count()
        try:
            self._socket.recv()
            self._socket.send("40")
            self._wait_for("40")
        except LineGone:
            self.hang_up()
            raise

    def ask(self, message: dict[str, Any]) -> dict[str, Any]:
        """Say a message and wait for its reply. Raises one of `LineGone`."""
        number = next(self._numbers)
        self._socket.send(f'42{number}["say",{json.dumps(message)}]')
        reply: dict[str, Any] = json.loads(self._wait_for(f"43{number}["))[0]
        return reply

    def hang_up(self) -> None:
        """End it; the server may have gone before."""
        self._socket.shutdown()

    def _wait_for(self, start: str) -> str:
        deadline = time.monotonic() + 10
        while time.monotonic() < deadline:
            frame = self._socket.recv()
            if not frame:
                raise websocket.WebSocketConnectionClosedException("the server has gone")
            if frame == "2":
                self._socket.send("3")
            if frame.startswith(start):
                return str(frame[len(start) - 1 :]) if start.endswith("[") else str(frame)
        raise TimeoutError(f"no {start} in 10 s")
