"""What is needed of the async driver, given from outside, so that nothing here names one."""

from collections.abc import Callable
from dataclasses import dataclass
from types import SimpleNamespace
from typing import Any, Protocol


class Wire(Protocol):
    """A socket that never blocks, as the standard library's."""

    def send(self, data: bytes | memoryview, /) -> int:
        """Send what fits."""

    def recv(self, most: int, /) -> bytes:
        """What has come."""

    def shutdown(self, how: int, /) -> None:
        """End the connection; whoever waits for it wakes up."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Green:
    """What is needed of the async driver."""

    wire_of: Callable[[Any], Wire]
    """The socket below what the driver hands to a websocket handler."""
    until_readable: Callable[[Wire], None]
    until_writable: Callable[[Wire, float], bool]
    """Wait so many seconds at most; whether it is writable."""
    spawn: Callable[[Callable[[], None]], object]
    breathe: Callable[[], object]


def green_of(driver: Any) -> Green:
    """Put it together from the driver's module, whose words are those of eventlet."""

    def until_readable(wire: Wire) -> None:
        driver.hubs.trampoline(wire, read=True)

    def until_writable(wire: Wire, seconds: float) -> bool:
        try:
            driver.hubs.trampoline(wire, write=True, timeout=seconds)
        except driver.Timeout:
            return False
        return True

    return Green(
        wire_of=lambda websocket: websocket.socket.fd,
        until_readable=until_readable,
        until_writable=until_writable,
        spawn=driver.spawn_n,
        breathe=lambda: driver.sleep(0),
    )


def signal_of(driver: Any) -> Any:
    """A signal of the driver's own kind: it wakes a thousand for less than a patched lock does in turn."""
    event = driver.Event()
    return SimpleNamespace(wait=event.wait, set=lambda: event.send(None))
