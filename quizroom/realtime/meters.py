"""What the server counts about itself, in the exposition format of Prometheus. Nothing tells of a person."""

from collections.abc import Callable, Sequence

from quizroom.protocol.messages import Reply
from quizroom.room.state import Room

SECONDS = (0.001, 0.002, 0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1.0, 2.0, 5.0)


class Meters:
    """Counters of one process, in a registry of their own."""

    def __init__(self, *, counting: bool = True) -> None:
        """Count from zero; without `counting` nothing is counted, and nothing is paid for it."""
        self._counting = counting
        if counting:
            self._begin()

    def _begin(self) -> None:
        from prometheus_client import (  # noqa: PLC0415 - only where metrics are asked for
            CollectorRegistry,
            Counter,
            Histogram,
        )

        self._registry = CollectorRegistry()
        self._replies = Counter(
            "quizroom_replies", "Messages answered", ["type", "result"], registry=self._registry
        )
        self._refusals = Counter("quizroom_refusals", "Messages refused", ["code"], registry=self._registry)
        self._ack = Histogram(
            "quizroom_reply_seconds",
            "From reading a message to its reply",
            ["type"],
            buckets=SECONDS,
            registry=self._registry,
        )
        self._commit = Histogram(
            "quizroom_commit_seconds",
            "Time of a commit to the store",
            buckets=SECONDS,
            registry=self._registry,
        )
        self._events = Counter("quizroom_events", "Events made durable", registry=self._registry)

    def watch(self, *, rooms: Callable[[], Sequence[Room]], connections: Callable[[], int]) -> None:
        """Give the numbers of now, whenever they are asked for."""
        if not self._counting:
            return
        from prometheus_client import Gauge  # noqa: PLC0415 - likewise

        gauges: tuple[tuple[str, str, Callable[[], float]], ...] = (
            ("quizroom_rooms", "Unfinished reviews in memory", lambda: len(_unfinished(rooms()))),
            (
                "quizroom_players",
                "Players in unfinished reviews",
                lambda: sum(len(room.players) for room in _unfinished(rooms())),
            ),
            ("quizroom_connections", "Open connections", connections),
        )
        for name, meaning, value in gauges:
            Gauge(name, meaning, registry=self._registry).set_function(value)

    def answered(self, kind: str, reply: Reply, seconds: float) -> None:
        """A message of this kind was answered after so long."""
        if not self._counting:
            return
        self._replies.labels(kind, reply.result).inc()
        self._ack.labels(kind).observe(seconds)
        if reply.code:
            self._refusals.labels(reply.code).inc()

    def committed(self, events: int, seconds: float) -> None:
        """A commit of so many events took so long."""
        if not self._counting:
            return
        self._commit.observe(seconds)
        self._events.inc(events)

    def page(self) -> bytes:
        """All numbers, as text."""
        from prometheus_client import generate_latest  # noqa: PLC0415 - likewise

        return generate_latest(self._registry)


def _unfinished(rooms: Sequence[Room]) -> list[Room]:
    return [room for room in rooms if room.phase != "finished"]
