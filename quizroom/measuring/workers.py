"""Two workers beside one: rooms on the first alone, then as many again on the second at the same time."""

from collections.abc import Iterator, Sequence
from contextlib import ExitStack, contextmanager
from dataclasses import dataclass, field
from pathlib import Path
from statistics import median
from time import perf_counter, sleep
from typing import Literal

from quizroom.measuring.crowd import PATIENCE_S, Crowd, Stalled
from quizroom.measuring.ears import SOCKET_IO, Ears, Step
from quizroom.measuring.held_back import held_back
from quizroom.measuring.processes import CannotMeasure, Running, started, two_cores
from quizroom.measuring.sides import READY, QuizroomSide

GOAL = 1.8
LOOK_EVERY_S = 0.0005
LETTERS = "ABC"
STEPS: tuple[Step | Literal["answers"], ...] = ("opening", "answers", "closing", "record")


@dataclass(frozen=True, slots=True, kw_only=True)
class Load:
    """How much is played at each worker."""

    rooms: int
    players: int
    """In each room."""
    repeats: int
    """How often one worker and two are measured, in turns."""
    share: float
    """How much of its core each worker may use: load, database and fan-out need the rest."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Pace:
    """One round in all rooms at so many workers."""

    answers_a_second: float
    """Acknowledged, while everybody answers at once."""
    rounds_a_second: float
    """Rounds of one player (opened, answered, closed, explained) by the clock."""
    rounds_a_core_second: float
    """The same for each second of a worker's CPU."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Comparison:
    """Medians of one worker and of two."""

    one: Pace
    two: Pace

    @property
    def ratio(self) -> float:
        """What two workers carry by the clock to what one carries."""
        return self.two.rounds_a_second / self.one.rounds_a_second

    @property
    def ratio_by_cpu(self) -> float:
        """The same by the CPU that they use."""
        return 2 * self.two.rounds_a_core_second / self.one.rounds_a_core_second


@dataclass(slots=True)
class BenchRoom:
    """A review at one worker with its players on lines of their own."""

    side: QuizroomSide
    players: int
    number: int = 0
    asked: int = 0

    def seat_all(self, rounds: int, cookie: str) -> None:
        """Deal a review, open its door, seat everybody."""
        self.side.lay_out(self.players, rounds, cookie)
        self.side.crowd.connect(range(self.players))
        self.side.crowd.until(lambda: self.side.ears.count["reply"] >= self.players, "everybody to be in")

    def begin(self, step: Step | Literal["answers"]) -> None:
        """Say what the step wants said; the replies come later."""
        self.side.ears.clear()
        self.asked = len(self.side.ears.desk_replies) + (step != "answers")
        self.number += step == "opening"
        if step == "answers":
            for member in range(self.players):
                self.side.crowd.say(member, self.side.answer(self.number, LETTERS[member % 3]))
        else:
            self.side.step(step, self.number)

    def is_done(self, step: str) -> bool:
        """Whether everybody has had what the step brings."""
        if step == "answers":
            return self.side.ears.count["reply"] >= self.players
        ears = self.side.ears
        return len(ears.desk_replies) >= self.asked and ears.count["public"] >= self.players


@dataclass(slots=True)
class Workers:
    """Both workers with their rooms."""

    servers: Sequence[Running]
    rooms: list[list[BenchRoom]] = field(default_factory=list)


def compare(load: Load, *, database_url: str, fanout_url: str, folder: Path) -> Comparison:
    """Measure one worker and two in turns, over the same database and with the same settings.

    Raises:
        CannotMeasure: a worker does not start.
        Stalled: a worker does not answer.
    """
    with _workers(database_url=database_url, fanout_url=fanout_url, folder=folder) as workers:
        _lay_out(workers, load)
        _round(workers, 2)  # warms up
        paces: dict[int, list[Pace]] = {1: [], 2: []}
        with held_back([server.pid for server in workers.servers], load.share):
            for _ in range(load.repeats):
                for count, found in paces.items():
                    found.append(_round(workers, count))
        return Comparison(one=_median(paces[1]), two=_median(paces[2]))


@contextmanager
def _workers(*, database_url: str, fanout_url: str, folder: Path) -> Iterator[Workers]:
    first, others = two_cores()
    settings = {
        "QUIZROOM_HOST": "127.0.0.1",
        "QUIZROOM_DATABASE_URL": database_url,
        "QUIZROOM_FANOUT_URL": fanout_url,
    }
    with ExitStack() as running:
        servers = []
        for name, cores in (("first", first), ("second", {min(others)})):
            place = folder / name
            place.mkdir()
            arguments = ("quizroom", "serve", "--port", "0", "--data", str(place / "data"))
            servers.append(
                running.enter_context(
                    started(arguments, cores=cores, ready=READY, folder=place, settings=settings)
                )
            )
        workers = Workers(servers=servers)
        yield workers
        for room in (room for rooms in workers.rooms for room in rooms):
            room.side.crowd.hang_up()


def _lay_out(workers: Workers, load: Load) -> None:
    workers.rooms = [[_room(server, load) for _ in range(load.rooms)] for server in workers.servers]
    cookie = workers.rooms[0][0].side.host_cookie()
    for room in (room for rooms in workers.rooms for room in rooms):
        room.seat_all(2 * load.repeats + 2, cookie)


def _room(server: Running, load: Load) -> BenchRoom:
    ears = Ears(path=SOCKET_IO, desk=load.players)
    side = QuizroomSide(server=server, crowd=Crowd(server.port, ears), ears=ears)
    return BenchRoom(side=side, players=load.players)


def _round(workers: Workers, count: int) -> Pace:
    """One round in all rooms of the first so many workers."""
    rooms = [room for rooms in workers.rooms[:count] for room in rooms]
    players = sum(room.players for room in rooms)
    before = _cpu_s(workers, count)
    took_s = {step: _step(rooms, step) for step in STEPS}
    _listen(rooms, 0.6)  # the counts that are still to be told belong to it
    cpu_s = _cpu_s(workers, count) - before
    return Pace(
        answers_a_second=players / took_s["answers"],
        rounds_a_second=players / sum(took_s.values()),
        rounds_a_core_second=players / cpu_s,
    )


def _step(rooms: list[BenchRoom], step: Step | Literal["answers"]) -> float:
    """Take a step in all rooms at once; how many seconds it took."""
    began = perf_counter()
    for room in rooms:
        room.begin(step)
    _until_done(rooms, step)
    return perf_counter() - began


def _until_done(rooms: list[BenchRoom], step: str) -> None:
    give_up_at = perf_counter() + PATIENCE_S
    waiting = list(rooms)
    while waiting:
        _hear(waiting)
        waiting = [room for room in waiting if not room.is_done(step)]
        if perf_counter() > give_up_at:
            raise Stalled(f"waited {PATIENCE_S:.0f} s for {step}")


def _listen(rooms: list[BenchRoom], seconds: float) -> None:
    end = perf_counter() + seconds
    while perf_counter() < end:
        _hear(rooms)


def _hear(rooms: list[BenchRoom]) -> None:
    # No room may be waited for by itself: with twice as many rooms each would be heard half as often.
    for room in rooms:
        room.side.crowd.hear(0.0)
    sleep(LOOK_EVERY_S)


def _cpu_s(workers: Workers, count: int) -> float:
    return sum(server.cpu_s() for server in workers.servers[:count])


def _median(paces: list[Pace]) -> Pace:
    return Pace(
        answers_a_second=median(pace.answers_a_second for pace in paces),
        rounds_a_second=median(pace.rounds_a_second for pace in paces),
        rounds_a_core_second=median(pace.rounds_a_core_second for pace in paces),
    )


__all__ = ["GOAL", "CannotMeasure", "Comparison", "Load", "Pace", "compare"]
