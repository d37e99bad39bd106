"""The whole measurement: for each size sessions of quizroom and of the floor in turns, in fresh processes."""

import os
import tempfile
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path

from quizroom.measuring.crowd import Stalled
from quizroom.measuring.goals import Figure, deflate_figure, figures
from quizroom.measuring.processes import CannotMeasure, two_cores
from quizroom.measuring.session import Session, play
from quizroom.measuring.sides import Bytes, floor_side, quizroom_side
from quizroom.open_files import raise_file_limit

SIZES = (200, 1000, 2000, 5000)


@dataclass(frozen=True, slots=True, kw_only=True)
class Course:
    """How much is measured for one size: pairs of sessions, and rounds in each."""

    sessions: int
    rounds: int


@dataclass(slots=True)
class Measured:
    """What came out for one size, and every goal that was missed, in words."""

    size: int
    figures: tuple[Figure, ...] = ()
    missed: list[str] = field(default_factory=list)


def course_of(size: int, *, quick: bool) -> Course:
    """How much is measured: most at the size of the goals; ten rounds in a row of the largest."""
    if quick:
        return Course(sessions=2, rounds=2)
    return {2000: Course(sessions=2, rounds=5), 5000: Course(sessions=1, rounds=10)}.get(
        size, Course(sessions=2, rounds=3)
    )


def measure(
    sizes: Sequence[int], *, quick: bool, gather_ms: int, tell: Callable[[str], None]
) -> list[Measured]:
    """Measure every size and tell each table as soon as it is there.

    Raises:
        CannotMeasure: this machine does not allow it.
    """
    serving, loading = two_cores()
    if too_few := raise_file_limit(max(sizes)):
        raise CannotMeasure(too_few)
    found = []
    with _held_to(loading):
        for size in sizes:
            measured = _measure_size(size, course_of(size, quick=quick), gather_ms, serving)
            for line in table(measured):
                tell(line)
            found.append(measured)
    return found


def table(measured: Measured) -> Iterator[str]:
    """What was measured for one size, for people."""
    yield f"{measured.size} players" + f"{'quizroom':>55}{'floor':>10}{'ratio':>8}"[len(str(measured.size)) :]
    yield from (figure.line() for figure in measured.figures)
    yield from (f"  {sentence}" for sentence in measured.missed)


def _measure_size(size: int, course: Course, gather_ms: int, cores: set[int]) -> Measured:
    measured = Measured(size=size)
    ours: list[Session] = []
    floors: list[Session] = []
    try:
        for number in range(course.sessions):
            told = Bytes()
            ours.append(_quizroom(size, course.rounds, told, cores, offers_deflate=number % 2 == 1))
            floors.append(_floor(size, course.rounds, told, cores, gather_ms))
    except Stalled as why:
        measured.missed.append(f"MISSED: every player stays to the end ({why})")
        return measured
    measured.figures = figures(ours, floors)
    if len(ours) > 1:
        measured.figures += (deflate_figure(ours, floors),)
    measured.missed += [f"MISSED: {figure.name}" for figure in measured.figures if figure.is_missed]
    if any(session.accepted_deflate for session in ours):
        measured.missed.append("MISSED: no connection is compressed")
    if refused := sum(session.refusals for session in ours):
        measured.missed.append(f"MISSED: every answer is taken ({refused} were refused)")
    return measured


def _quizroom(size: int, rounds: int, told: Bytes, cores: set[int], *, offers_deflate: bool) -> Session:
    with (
        tempfile.TemporaryDirectory(prefix="quizroom-bench-") as folder,
        quizroom_side(size, rounds=rounds, folder=Path(folder), cores=cores) as side,
    ):
        return play(side, size, rounds=rounds, offers_deflate=offers_deflate, keep=told)


def _floor(size: int, rounds: int, told: Bytes, cores: set[int], gather_ms: int) -> Session:
    with (
        tempfile.TemporaryDirectory(prefix="quizroom-bench-") as folder,
        floor_side(size, told, gather_ms=gather_ms, folder=Path(folder), cores=cores) as side,
    ):
        return play(side, size, rounds=rounds, offers_deflate=False)


@contextmanager
def _held_to(cores: set[int]) -> Iterator[None]:
    before = os.sched_getaffinity(0)
    os.sched_setaffinity(0, cores)
    try:
        yield
    finally:
        os.sched_setaffinity(0, before)
