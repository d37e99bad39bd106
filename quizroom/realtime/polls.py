"""What goes by long polling: how it is answered, and letting go of who does not fetch what waits.

Lines by websocket see to themselves (`framed.py`); these the library serves, which keeps all that waits.
"""

from collections.abc import Callable, Mapping
from typing import Any
from urllib.parse import parse_qs

from quizroom.realtime.framed import MOST_WAITING

PATH = "/socket.io/"
HEADERS = (("Cache-Control", "no-store"), ("X-Content-Type-Options", "nosniff"))
FEW_PACKETS = 20
"""So few need not be measured."""
LOOK_EVERY_S = 1.0

Application = Callable[[dict[str, Any], Callable[..., Any]], Any]


def with_plain_polls(web: Application) -> Application:
    """The application whose polls are read by no script of another site, kept by nobody and taken for text.

    A poll may ask to be wrapped as a script (JSONP), which a page of any site may load: that is refused.
    """

    def application(environ: dict[str, Any], start_response: Callable[..., Any]) -> Any:
        if not environ.get("PATH_INFO", "").startswith(PATH):
            return web(environ, start_response)

        def start(status: str, headers: list[tuple[str, str]], *more: Any) -> Any:
            return start_response(status, [*headers, *HEADERS], *more)

        if "j" in parse_qs(environ.get("QUERY_STRING", ""), keep_blank_values=True):
            start("400 BAD REQUEST", [("Content-Type", "text/plain")])
            return [b"Ask for plain polls, without j."]
        return web(environ, start)

    return application


def hang_up(sockets: Any, sid: str) -> None:
    """End a connection of Engine.IO at once; the library would wait until all was fetched, even for ever."""
    socket = sockets.sockets.pop(sid, None)
    if socket is not None:
        socket.close(wait=False, reason=sockets.reason.SERVER_DISCONNECT)


def let_go_of_who_does_not_fetch(sockets: Mapping[str, Any], close: Callable[[str], object]) -> None:
    """End each connection of the library's for which more characters wait than bytes may for a websocket."""
    for sid, socket in tuple(sockets.items()):
        if _waiting(socket.queue) > MOST_WAITING:
            close(sid)


def _waiting(queue: Any) -> int:
    """Characters in a queue of packets; what a websocket of our own has is no queue."""
    packets = getattr(queue, "queue", ())
    if len(packets) <= FEW_PACKETS:
        return 0
    return sum(
        len(packet.data) if isinstance(packet.data, (str, bytes)) else 0
        for packet in tuple(packets)
        if packet
    )
