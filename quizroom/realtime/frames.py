"""Frames that do no good: those that are no Socket.IO packet, that promise too much, and compressed ones."""

import logging
from collections.abc import Callable
from typing import Any

logger = logging.getLogger(__name__)

MOST_PARTS = 4
"""Binary parts that a packet may announce. quizroom asks for none, and keeps them until the last has come."""
BINARY_PACKETS = ("5", "6")
GREETED = "quizroom.greeted"
"""In what the library keeps of a line: as whom it was greeted."""


def close_on_nonsense(
    handle: Callable[[str, Any], None], close: Callable[[str], None]
) -> Callable[..., None]:
    """A handler of raw frames that never fails; what `handle` cannot read ends its connection by `close`."""

    def handled(sid: str, frame: Any) -> None:
        try:
            _refuse_many_parts(frame)
            handle(sid, frame)
        except Exception as error:  # noqa: BLE001 - whatever a stranger sends, the others must be served
            logger.warning("a frame could not be read (%s); its connection was closed", type(error).__name__)
            close(sid)

    return handled


def greeted_once(connect: Callable[[str, dict[str, Any]], None]) -> Callable[..., bool]:
    """A handler of greetings that takes one for each line.

    Who said goodbye and greeted again over the same line would begin with all credits, as often as they like.
    """

    def greeted(sid: str, environ: dict[str, Any], *_more: Any) -> bool:
        if environ.setdefault(GREETED, sid) != sid:
            return False
        connect(sid, environ)
        return True

    return greeted


def _refuse_many_parts(frame: Any) -> None:
    """A packet says how many parts follow it; the library would wait for any number, and keep them all."""
    if not isinstance(frame, str) or not frame.startswith(BINARY_PACKETS):
        return
    parts, dash, _ = frame[1:].partition("-")
    if dash and parts.isdecimal() and int(parts) > MOST_PARTS:
        raise ValueError("too many binary parts")


def without_deflate(web: Callable[..., Any]) -> Callable[..., Any]:
    """The application as if no browser offered to compress its frames.

    All browsers offer it, and taking it doubles the work and the memory of a broadcast.
    """

    def application(environ: dict[str, Any], start_response: Callable[..., Any]) -> Any:
        environ.pop("HTTP_SEC_WEBSOCKET_EXTENSIONS", None)
        return web(environ, start_response)

    return application
