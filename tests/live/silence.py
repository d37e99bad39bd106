"""Lines on which nobody says anything, behind proxies that cut what is silent for half a minute, in true
time.

They are silent beside other tests, so that hardly anybody waits for them.
"""

import time
from collections.abc import Iterator
from contextlib import ExitStack, contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import socketio

from tests import serving
from tests.live.bad_line import BadLine, Weather, line_to

CUT_AFTER_S = 30.0
"""What many proxies allow at least (common practice, no source; nginx's proxy_read_timeout is 60 s)."""
SILENT_S = 50.0
"""Long enough for a cut, and for two of the server's own signs of life."""
TOO_SELDOM = {"QUIZROOM_PING_S": "60"}


@dataclass
class SilentLine:
    """One client and the proxy before it."""

    client: Any
    proxy: BadLine

    def is_open(self) -> bool:
        """Whether the client still takes itself for connected."""
        return bool(self.client.connected)

    def works(self) -> bool:
        """Whether something can be said on it."""
        reply = self.client.call("say", {"id": "still there", "type": "probe_time"}, timeout=10)
        return bool(reply["result"] == "done")

    def cuts(self) -> int:
        """How many connections the proxy has cut because they were silent."""
        return self.proxy.counts.idle_cuts


@dataclass
class SilentLines:
    """A websocket and a long poll as the server keeps them by default, and one websocket kept too seldom."""

    kept: tuple[SilentLine, SilentLine]
    seldom: SilentLine
    begun_at: float

    def wait(self) -> None:
        """Let the silence last as long as it must."""
        time.sleep(max(0.0, self.begun_at + SILENT_S - time.monotonic()))


@contextmanager
def silence(folder: Path) -> Iterator[SilentLines]:
    """All of them, from now on."""
    with ExitStack() as over:

        def line(server: serving.Server, transport: str) -> SilentLine:
            proxy = over.enter_context(line_to(server, Weather(idle_s=CUT_AFTER_S)))
            client = socketio.Client(reconnection=False)
            client.connect(proxy.address, transports=[transport], wait_timeout=30)
            over.callback(client.disconnect)
            return SilentLine(client, proxy)

        server = serving.start(folder / "usual")
        over.callback(server.stop)
        other = serving.start(folder / "seldom", settings=TOO_SELDOM)
        over.callback(other.stop)
        kept = line(server, "websocket"), line(server, "polling")
        yield SilentLines(kept, line(other, "websocket"), time.monotonic())
