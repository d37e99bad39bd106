"""Two workers beside one: rooms on the first alone, then as many again on the second at the same time."""

import secrets
from collections.abc import Iterator, Sequence
from contextlib import ExitStack, contextmanager
from dataclasses import dataclass, field
from pathlib import Path
from statistics import median
from time import perf_counter
from typing import Any

from quizroom.measuring.crowd import PATIENCE_S, Crowd, Stalled
from quizroom.measuring.ears import SOCKET_IO, Ears, said
from quizroom.measuring.frames import masked
from quizroom.measuring.processes import CannotMeasure, Running, started, two_cores
from quizroom.measuring.sides import READY, enter, submit
from quizroom.rehearsal.entry import desk_cookie, desk_settings

GOAL = 1.8
LETTERS = "ABC"
STEPS = ("open_round", "answers", "close_round", "show_record")


@dataclass(frozen=True, slots=True, kw_only=True)
class Load:
    """How much is played at each worker."""

    rooms: int
    players: int
    """In each room."""
    repeats: int
    """How often one worker and two are measured, in turns."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Pace:
    """One round in all rooms at so many workers."""

    answers_a_second: float
    """Acknowledged, while everybody answers at once."""
    rounds_a_core_second: float
    """Rounds of one player (opened, answered, closed, explained) for each second of a worker's CPU."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Comparison:
    """Medians of one worker and of two."""

    one: Pace
    two: Pace

    @property
    def ratio(self) -> float:
        """What two workers carry to what one carries, each having a core of its own."""
        return 2 * self.two.rounds_a_core_second / self.one.rounds_a_core_second

    @property
    def ratio_here(self) -> float:
        """The same by the clock, with workers, load, database and fan-out on the cores of this machine."""
        return self.two.answers_a_second / self.one.answers_a_second


@dataclass(slots=True)
class BenchRoom:
    """A review at one worker with its players on lines of their own."""

    crowd: Crowd
    ears: Ears
    players: int
    number: int = 0
    asked: int = 0
    room: str = ""

    def lay_out(self, cookie: str, course: str, rounds: int) -> None:
        """Deal a review, open its door, seat everybody."""
        self.crowd.connect([self.ears.desk], cookie=cookie)
        self.crowd.until(lambda: self.ears.count["connected"] == 1, "the desk")
        desk = self._order(
            type="prepare_review",
            title="Bench",
            course=course,
            families=["nerve"],
            rounds=rounds,
            timing="untimed",
            typed=False,
            seed=1,
        )["desk"]
        self._order(type="open_door", round=0)
        code = self._order(type="open_desk", room=desk["room"])["desk"]["public"]["door_code"]
        self.ears.first_words = {member: enter(member, code) for member in range(self.players)}
        self.crowd.connect(range(self.players))
        self.crowd.until(lambda: self.ears.count["reply"] >= self.players, "everybody to be in")
        self.ears.clear()

    def begin(self, step: str) -> None:
        """Say what the step wants said; the replies come later."""
        self.ears.clear()
        self.asked = len(self.ears.desk_replies) + (step != "answers")
        if step == "answers":
            for member in range(self.players):
                self.crowd.say(member, masked(submit(self.number, LETTERS[member % 3])))
            return
        self.number += step == "open_round"
        message = {"id": secrets.token_hex(16), "type": step, "round": self.number}
        self.crowd.say(self.ears.desk, masked(said(message)))

    def is_done(self, step: str) -> bool:
        """Whether everybody has had what the step brings."""
        if step == "answers":
            return self.ears.count["reply"] >= self.players
        return len(self.ears.desk_replies) >= self.asked and self.ears.count["public"] >= self.players

    def _order(self, **message: Any) -> dict[str, Any]:
        before = len(self.ears.desk_replies)
        self.crowd.say(self.ears.desk, masked(said({"id": secrets.token_hex(16), **message})))
        self.crowd.until(lambda: len(self.ears.desk_replies) > before, f"a reply to {message['type']}")
        reply = self.ears.desk_replies.pop()
        if reply["result"] != "done":
            raise Stalled(f"the server refused {message['type']}: {reply['text']}")
        return reply


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
            room.crowd.hang_up()


def _lay_out(workers: Workers, load: Load) -> None:
    address = f"http://127.0.0.1:{workers.servers[0].port}"
    cookie = desk_cookie(address, workers.servers[0].said.partition("/desk/enter/")[2].split()[0])
    courses = desk_settings(address, cookie)["courses"]
    course = max(courses, key=lambda each: (int(each["muscles"]), str(each["id"])))
    for server in workers.servers:
        rooms = []
        for _ in range(load.rooms):
            ears = Ears(path=SOCKET_IO, desk=load.players)
            rooms.append(BenchRoom(crowd=Crowd(server.port, ears), ears=ears, players=load.players))
            rooms[-1].lay_out(cookie, course["id"], rounds=2 * load.repeats + 2)
        workers.rooms.append(rooms)


def _round(workers: Workers, count: int) -> Pace:
    """One round in all rooms of the first so many workers."""
    rooms = [room for rooms in workers.rooms[:count] for room in rooms]
    players = sum(room.players for room in rooms)
    before = _cpu_s(workers, count)
    answers_a_second = 0.0
    for step in STEPS:
        began = perf_counter()
        for room in rooms:
            room.begin(step)
        _until_done(rooms, step)
        if step == "answers":
            answers_a_second = players / (perf_counter() - began)
    _listen(rooms, 0.6)  # the counts that are still to be told belong to it
    cpu_s = _cpu_s(workers, count) - before
    return Pace(answers_a_second=answers_a_second, rounds_a_core_second=players / cpu_s)


def _until_done(rooms: list[BenchRoom], step: str) -> None:
    give_up_at = perf_counter() + PATIENCE_S
    waiting = list(rooms)
    while waiting:
        for room in waiting:
            room.crowd.hear(0.002)
        waiting = [room for room in waiting if not room.is_done(step)]
        if perf_counter() > give_up_at:
            raise Stalled(f"waited {PATIENCE_S:.0f} s for {step}")


def _listen(rooms: list[BenchRoom], seconds: float) -> None:
    end = perf_counter() + seconds
    while perf_counter() < end:
        for room in rooms:
            room.crowd.hear(0.002)


def _cpu_s(workers: Workers, count: int) -> float:
    return sum(server.cpu_s() for server in workers.servers[:count])


def _median(paces: list[Pace]) -> Pace:
    return Pace(
        answers_a_second=median(pace.answers_a_second for pace in paces),
        rounds_a_core_second=median(pace.rounds_a_core_second for pace in paces),
    )


__all__ = ["GOAL", "CannotMeasure", "Comparison", "Load", "Pace", "compare"]
