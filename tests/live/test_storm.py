"""A class answers as fast as it can while the server is killed or its disk is full."""

import resource
import threading
import time
from collections.abc import Iterator
from contextlib import contextmanager, suppress

import pytest
from socketio.exceptions import SocketIOError

from tests.live.lesson import Lesson, gathered
from tests.serving import Server, StartServer

PLAYERS = tuple(f"player{number}" for number in range(8))


class Storm:
    """Every player changes the own answer again and again, and remembers what was acknowledged."""

    def __init__(self, lesson: Lesson) -> None:
        """Begin at once, a thread for each."""
        self.acknowledged: dict[str, list[str]] = {player: [] for player in PLAYERS}
        self.tried: dict[str, list[str]] = {player: [] for player in PLAYERS}
        self._over = threading.Event()
        self._threads = [threading.Thread(target=self._answer, args=(lesson, player)) for player in PLAYERS]
        for thread in self._threads:
            thread.start()

    def end(self) -> None:
        """No more answers."""
        self._over.set()
        for thread in self._threads:
            thread.join(30)

    def _answer(self, lesson: Lesson, player: str) -> None:
        number = 0
        with suppress(SocketIOError):  # the server is gone
            while not self._over.is_set():
                letter = "ABC"[number % 3]
                self.tried[player].append(letter)
                message = {
                    "id": f"{player} {number}",
                    "type": "submit_answer",
                    "round": 1,
                    "choice": [letter],
                }
                reply = lesson.seats[player].say_raw(message, wait_s=3.0)
                if reply["result"] == "done":
                    self.acknowledged[player].append(letter)
                    number += 1
                else:
                    time.sleep(0.05)


def answers(lesson: Lesson) -> dict[str, str]:
    room = lesson.logged()
    given = room.rounds[0].answers.items()
    return {room.players[player].handle.lower(): answer.choice[0] for player, answer in given}


@pytest.fixture
def lesson(server: Server) -> Iterator[Lesson]:
    """Eight players with an item of single letters open."""
    lesson = gathered(server, PLAYERS, families=["nerve"])
    lesson.open_next()
    yield lesson
    lesson.hang_up()


def test_no_acknowledged_answer_is_lost_when_the_server_is_killed_in_a_storm(
    lesson: Lesson, start_server: StartServer
) -> None:
    storm = Storm(lesson)
    time.sleep(1.0)
    lesson.server.kill()
    storm.end()
    kept = answers(lesson)
    assert sum(map(len, storm.acknowledged.values())) > 50
    for player in PLAYERS:
        # the last one acknowledged, or one sent after it whose acknowledgement was cut off
        assert kept[player] in (storm.acknowledged[player][-1], storm.tried[player][-1])
    lesson.restart(start_server)
    assert answers(lesson) == kept


@contextmanager
def full_disk(server: Server) -> Iterator[None]:
    """No file of the server can grow: every write ends like one on a full disk (prlimit, Linux)."""
    none_more, unlimited = (0, resource.RLIM_INFINITY), (resource.RLIM_INFINITY, resource.RLIM_INFINITY)
    resource.prlimit(server.process.pid, resource.RLIMIT_FSIZE, none_more)
    try:
        yield
    finally:
        resource.prlimit(server.process.pid, resource.RLIMIT_FSIZE, unlimited)


@pytest.mark.skipif(not hasattr(resource, "prlimit"), reason="prlimit is there on Linux only")
def test_on_a_full_disk_nothing_is_acknowledged_and_afterwards_all_goes_on(lesson: Lesson) -> None:
    lesson.seats["player0"].done("submit_answer", round=1, choice=["A"])
    before = lesson.logged()
    with full_disk(lesson.server):
        reply = lesson.seats["player0"].say("submit_answer", round=1, choice=["B"])
        assert (reply["result"], reply["code"]) == ("failed", "not_stored")
        assert reply["text"].endswith(".")
        refused = lesson.host.say("close_round", round=1)
        assert (refused["result"], refused["code"]) == ("failed", "not_stored")
        assert lesson.host.done("show_view")["desk"]["public"]["phase"] == "answering"
    assert lesson.logged() == before
    lesson.seats["player0"].done("submit_answer", round=1, choice=["C"])
    assert answers(lesson) == {"player0": "C"}
