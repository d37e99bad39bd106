"""What the gateway needs of the socket server."""

from typing import Any, Protocol


class Lines(Protocol):
    """The Socket.IO server, as far as it is used; its async mode is nobody's business but the server's."""

    def emit(self, event: str, data: Any, *, to: str) -> None:
        """Send to a room or a connection."""

    def enter_room(self, sid: str, room: str) -> None:
        """Let a connection hear what is sent to a room."""

    def leave_room(self, sid: str, room: str) -> None:
        """The reverse."""
