"""What is needed of the async driver, given from outside, so that nothing here names one."""

from collections import deque
from collections.abc import Callable
from contextlib import suppress
from dataclasses import dataclass
from typing import Any, Protocol


class Wire(Protocol):
    """A socket that never blocks, as the standard library's."""

    def send(self, data: bytes | memoryview, /) -> int:
        """Send what fits."""

    def recv(self, most: int, /) -> bytes:
        """What has come."""

    def shutdown(self, how: int, /) -> None:
        """End the connection; whoever waits for it wakes up."""


class Ear(Protocol):
    """Waits, again and again, until something has come over one wire."""

    def wait(self) -> None:
        """Return once the wire can be read, or has ended."""

    def close(self) -> None:
        """Wait no more; to be called before the wire is closed."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Green:
    """What is needed of the async driver."""

    wire_of: Callable[[Any], Wire]
    """The socket below what the driver hands to a websocket handler."""
    ear_of: Callable[[Wire], Ear]
    until_writable: Callable[[Wire, float], bool]
    """Wait so many seconds at most; whether it is writable."""
    spawn: Callable[[Callable[[], None]], object]
    breathe: Callable[[], object]


class StandingEar:
    """An ear that stays with the driver's hub from one message to the next.

    The driver's own way of waiting asks the system to watch the socket, and to forget it, for every message:
    a tenth of all that an answer costs.
    """

    __slots__ = ("_current", "_hub", "_listener", "_reader", "_wire")

    def __init__(self, driver: Any, wire: Any) -> None:
        """Nothing is watched until somebody waits."""
        self._hub, self._current = driver.hubs.get_hub(), driver.getcurrent
        self._wire = wire
        self._listener: Any = None
        self._reader: Any = None

    def wait(self) -> None:
        """Let others go on until the wire can be read, or has ended."""
        if self._listener is None or self._listener.spent:
            hub = self._hub
            self._listener = hub.add(hub.READ, self._wire.fileno(), self._readable, self._ended, None)
        self._reader = self._current()
        try:
            self._hub.switch()
        finally:
            self._reader = None

    def close(self) -> None:
        """Let the hub forget the wire."""
        listener, self._listener = self._listener, None
        if listener is not None and not listener.spent:
            self._hub.remove(listener)

    def _readable(self, _number: int) -> None:
        if self._reader is None:
            # Busy with what came before. The hub would call again and again; the next wait ends at once.
            self.close()
        else:
            self._reader.switch()

    def _ended(self, *reason: Any) -> None:
        if self._reader is not None:
            self._reader.throw(*reason)


def green_of(driver: Any) -> Green:
    """Put it together from the driver's module, whose words are those of eventlet."""

    def until_writable(wire: Wire, seconds: float) -> bool:
        try:
            driver.hubs.trampoline(wire, write=True, timeout=seconds)
        except driver.Timeout:
            return False
        return True

    return Green(
        wire_of=lambda websocket: websocket.socket.fd,
        ear_of=lambda wire: StandingEar(driver, wire),
        until_writable=until_writable,
        spawn=driver.spawn_n,
        breathe=lambda: driver.sleep(0),
    )


class Bell:
    """Lets any number of green threads wait, and then lets them all go on in one turn of the driver's hub.

    The driver's own event asks its hub for a turn for each of them: with a thousand answers in a commit that
    costs as much as reading them.
    """

    __slots__ = ("_current", "_hub", "_is_set", "_waiting")

    def __init__(self, driver: Any) -> None:
        """Nobody waits."""
        self._hub, self._current = driver.hubs.get_hub(), driver.getcurrent
        self._waiting: deque[Any] = deque()
        self._is_set = False

    def wait(self) -> None:
        """Return once it is set."""
        if self._is_set:
            return
        me = self._current()
        self._waiting.append(me)
        try:
            self._hub.switch()
        except BaseException:  # whoever is killed here must not be woken elsewhere
            with suppress(ValueError):
                self._waiting.remove(me)
            raise

    def set(self) -> None:
        """Let all go on, in the order in which they came."""
        self._is_set = True
        self._hub.schedule_call_global(0, self._let_go)

    def _let_go(self) -> None:
        while self._waiting:
            self._waiting.popleft().switch()
