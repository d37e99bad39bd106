"""What a room must reach, and a table of what it reached."""

from collections.abc import Sequence
from dataclasses import dataclass
from statistics import median

from quizroom.measuring.ears import Step
from quizroom.measuring.session import Session

GOAL_SIZE = 2000
"""Players at which the goals hold."""
MOST_ACK_S = 0.006
MOST_KIB = 70.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Figure:
    """One measured value beside the floor's. `most` and `least` are limits for their ratio."""

    name: str
    unit: str
    value: float
    floor: float
    most: float | None = None
    least: float | None = None
    most_itself: float | None = None
    """A limit for the value by itself."""

    @property
    def ratio(self) -> float:
        """How many times the floor."""
        return self.value / self.floor if self.floor else 0.0

    @property
    def is_missed(self) -> bool:
        """Whether a goal is not reached."""
        return (
            (self.most is not None and self.ratio > self.most)
            or (self.least is not None and self.ratio < self.least)
            or (self.most_itself is not None and self.value > self.most_itself)
        )

    def line(self) -> str:
        """A row of the table, with the goals that there are."""
        goals = (
            f"at most {self.most:g} x floor" if self.most is not None else "",
            f"at least {self.least:g} x floor" if self.least is not None else "",
            f"at most {self.most_itself:g} {self.unit}" if self.most_itself is not None else "",
        )
        wanted = ", ".join(goal for goal in goals if goal)
        verdict = f"   {'MISSED' if self.is_missed else 'reached'}: {wanted}" if wanted else ""
        name = f"{self.name}, {self.unit}"
        return f"  {name:<52}{self.value:>10.2f}{self.floor:>10.2f}{self.ratio:>8.2f}{verdict}"


def figures(ours: Sequence[Session], floors: Sequence[Session]) -> tuple[Figure, ...]:
    """All figures of sessions of one size, medians over all rounds; goals at their own size only."""
    size = ours[0].size
    limits = _limits() if size == GOAL_SIZE else {}
    rows = zip(_values(ours), _values(floors), strict=True)
    return tuple(
        Figure(name=name, unit=unit, value=value, floor=floor, **limits.get(name, {}))
        for (name, unit, value), (_, _, floor) in rows
    )


def deflate_figure(ours: Sequence[Session], floors: Sequence[Session]) -> Figure:
    """What a browser's offer of compression costs: fan-out CPU of sessions with it, beside those without.

    Both in times of the floor that ran next to them: a machine may slow down in between.
    """
    return Figure(
        name="opening, CPU where deflate is offered (floor: not)",
        unit="x",
        value=_median(ours[1::2], "opening") / _median(floors[1::2], "opening"),
        floor=_median(ours[::2], "opening") / _median(floors[::2], "opening"),
        most=1.15 if ours[0].size == GOAL_SIZE else None,
    )


def percentile(values: Sequence[float], share: float) -> float:
    """The value below which this share of them lies (nearest rank; common practice, no source)."""
    ordered = sorted(values)
    return ordered[min(len(ordered) - 1, int(share * len(ordered)))] if ordered else 0.0


def _values(sessions: Sequence[Session]) -> list[tuple[str, str, float]]:
    size = sessions[0].size
    return [
        ("opening to the last player", "ms", 1000 * _last(sessions, "opening")),
        ("record to the last player", "ms", 1000 * _last(sessions, "record")),
        ("record and own view to the last player", "ms", 1000 * _own(sessions)),
        ("opening, CPU", "ms", 1000 * _median(sessions, "opening")),
        ("durable answers, all at once", "1/s", median(v for s in sessions for v in s.answers_a_second)),
        ("spread answers, median acknowledgement", "ms", 1000 * _ack(sessions, 0.5)),
        ("spread answers, 99 % acknowledged within", "ms", 1000 * _ack(sessions, 0.99)),
        (
            "CPU of a round for each player",
            "us",
            1e6 * _round_cpu(sessions) / size,
        ),
        ("joins", "1/s", median(size / s.join_s for s in sessions)),
        ("join storm, CPU for each player", "us", 1e6 * median(s.join_cpu_s for s in sessions) / size),
        ("memory of a connection", "KiB", median(s.kib for s in sessions)),
    ]


def _limits() -> dict[str, dict[str, float]]:
    return {
        "opening to the last player": {"most": 1.15},
        "record to the last player": {"most": 1.15},
        "opening, CPU": {"most": 1.1},
        "durable answers, all at once": {"least": 0.55},
        "spread answers, 99 % acknowledged within": {"most": 1.15, "most_itself": 1000 * MOST_ACK_S},
        "join storm, CPU for each player": {"most": 3.0},
        "memory of a connection": {"most_itself": MOST_KIB},
    }


def _last(sessions: Sequence[Session], step: Step) -> float:
    return median(value for session in sessions for value in session.last_s[step])


def _round_cpu(sessions: Sequence[Session]) -> float:
    return median(value for session in sessions for value in session.round_cpu_s)


def _own(sessions: Sequence[Session]) -> float:
    return median(value for session in sessions for value in session.own_s["record"])


def _median(sessions: Sequence[Session], step: Step) -> float:
    return median(value for session in sessions for value in session.step_cpu_s[step])


def _ack(sessions: Sequence[Session], share: float) -> float:
    return median(percentile(acks, share) for session in sessions for acks in session.acks_s)
