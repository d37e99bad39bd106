"""What the server counts about itself, in the exposition format of Prometheus. Nothing tells of a person."""

from collections.abc import Callable, Sequence

from prometheus_client import CollectorRegistry, Counter, Gauge, Histogram, generate_latest

from quizroom.protocol.replies import Reply
from quizroom.room.state import Room

SECONDS = (0.001, 0.002, 0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1.0, 2.0, 5.0)


class Meters:
    """Counters of one process, in a registry of their own."""

    def __init__(self) -> None:
        """Count from zero."""
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
        self._replies.labels(kind, reply.result).inc()
        self._ack.labels(kind).observe(seconds)
        if reply.code:
            self._refusals.labels(reply.code).inc()

    def committed(self, events: int, seconds: float) -> None:
        """A commit of so many events took so long."""
        self._commit.observe(seconds)
        self._events.inc(events)

    def page(self) -> bytes:
        """All numbers, as text."""
        return generate_latest(self._registry)


def _unfinished(rooms: Sequence[Room]) -> list[Room]:
    return [room for room in rooms if room.phase != "finished"]
