"""Notices between workers by Redis publish and subscribe.

Redis keeps nothing of them. While it is away everybody goes on by looking into the log.
"""

import logging
import threading
import time
from collections.abc import Callable, Mapping
from functools import partial
from secrets import token_hex

from redis import Redis
from redis.exceptions import RedisError

CHANNEL = "quizroom.notices"
GATHER_S = 0.02
"""Notices that come within so long go together: a busy worker would spend its time on telling and hearing."""
TRY_AGAIN_S = 0.5
LISTEN_S = 1.0
ANSWER_WITHIN_S = 2.0

logger = logging.getLogger(__name__)


class RedisNotices:
    """`service.ports.Notices`: two loops, to be run in threads of any kind, one that sends and one that
    listens.
    """

    def __init__(self, url: str) -> None:
        """Speak with the server at `url`; nothing is connected yet."""
        self._url = url
        self._name = token_hex(8)
        self._due: dict[str, int] = {}
        self._wake = threading.Event()
        self._over = threading.Event()
        self._faults = {"send": "", "listen": "Redis has not been reached yet."}

    def loops(
        self, hear: Callable[[str, int], None], hear_again: Callable[[], None]
    ) -> tuple[Callable[[], None], ...]:
        """One that sends and one that listens."""
        return self.send, partial(self.listen, hear, hear_again)

    def publish(self, room: str, version: int) -> None:
        """Put a notice out to be sent; several of one room become one."""
        self._due[room] = version
        self._wake.set()

    def fault(self) -> str:
        """What keeps notices from arriving."""
        return self._faults["listen"] or self._faults["send"]

    def end(self) -> None:
        """Let both loops come to their end."""
        self._over.set()
        self._wake.set()

    def send(self) -> None:
        """Send what is put out, until `end`. What cannot be sent is dropped: the others look by
        themselves.
        """
        with self._client() as client:
            while not self._over.is_set():
                self._wake.wait(TRY_AGAIN_S if self._faults["send"] else None)
                time.sleep(GATHER_S)
                self._wake.clear()
                due, self._due = self._due, {}
                try:
                    self._send(client, due)
                    self._note("send", "")
                except (RedisError, OSError) as error:
                    self._note("send", str(error))

    def listen(self, hear: Callable[[str, int], None], hear_again: Callable[[], None]) -> None:
        """Pass on each notice that arrives, until `end`; `hear_again` is called after each break."""
        while not self._over.is_set():
            try:
                self._listen(hear, hear_again)
            except (RedisError, OSError, ValueError) as error:
                self._note("listen", str(error))
                time.sleep(TRY_AGAIN_S)

    def _listen(self, hear: Callable[[str, int], None], hear_again: Callable[[], None]) -> None:
        with self._client() as client, client.pubsub(ignore_subscribe_messages=False) as channel:
            channel.subscribe(CHANNEL)
            while not self._over.is_set():
                message = channel.get_message(timeout=LISTEN_S)
                match message:
                    case {"type": "subscribe"}:
                        self._note("listen", "")
                        hear_again()
                    case {"type": "message", "data": bytes(data)}:
                        self._pass_on(data.decode(), hear)
                    case _:
                        pass

    def _send(self, client: Redis, due: Mapping[str, int]) -> None:
        lines = [self._name, *(f"{version} {room}" for room, version in due.items())]
        if due:
            client.publish(CHANNEL, "\n".join(lines))
        else:
            client.ping()

    def _pass_on(self, notices: str, hear: Callable[[str, int], None]) -> None:
        name, *lines = notices.split("\n")
        if name != self._name:
            for line in lines:
                version, _, room = line.partition(" ")
                hear(room, int(version))

    def _client(self) -> Redis:
        return Redis.from_url(
            self._url,
            socket_connect_timeout=ANSWER_WITHIN_S,
            socket_timeout=ANSWER_WITHIN_S,
            health_check_interval=ANSWER_WITHIN_S,
        )

    def _note(self, way: str, fault: str) -> None:
        if bool(fault) != bool(self._faults[way]):
            logger.log(logging.WARNING if fault else logging.INFO, "notices: %s", fault or f"can {way}")
        self._faults[way] = (
            "Redis does not answer (the log says why); changes take up to half a second, and each worker"
            " counts wrong door codes and passwords for itself."
            if fault
            else ""
        )
