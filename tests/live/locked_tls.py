"""TLS for clients that read in one thread and write in another, as the library's websocket client does.

OpenSSL forbids both at the same time on one connection (its documentation, openssl-threads(7)), and
Python 3.11 does not keep them apart: in one of five runs a line broke on a fast answer.
"""

import select
import ssl
import threading
from collections.abc import Callable
from typing import Any, TypeVar

Done = TypeVar("Done", bytes, int)


class LockedSocket(ssl.SSLSocket):
    """Reads and writes in turns; a reader waits outside of its turn."""

    def recv(self, buflen: int = 1024, flags: int = 0) -> bytes:
        """As the standard library's."""
        return self._in_turn(lambda: super(LockedSocket, self).recv(buflen, flags))

    def send(self, data: Any, flags: int = 0) -> int:
        """As the standard library's."""
        return self._in_turn(lambda: super(LockedSocket, self).send(data, flags))

    def _in_turn(self, step: Callable[[], Done]) -> Done:
        while True:
            with _turn_of(self):
                patience_s = self.gettimeout()
                self.settimeout(0)
                try:
                    return step()
                except ssl.SSLWantReadError:
                    waits: tuple[list[ssl.SSLSocket], list[ssl.SSLSocket]] = ([self], [])
                except ssl.SSLWantWriteError:
                    waits = ([], [self])
                finally:
                    self.settimeout(patience_s)
            if not any(select.select(*waits, [], patience_s)):
                raise TimeoutError("The read operation timed out")


def _turn_of(socket: ssl.SSLSocket) -> threading.RLock:
    turn: threading.RLock = socket.__dict__.setdefault("_turn", threading.RLock())
    return turn


def locked_context() -> ssl.SSLContext:
    """The standard library's default, whose sockets are locked."""
    context = ssl.create_default_context()
    context.sslsocket_class = LockedSocket
    return context
