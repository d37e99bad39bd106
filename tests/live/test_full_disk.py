"""The disk is full: that is said, nothing is acknowledged, and with room again all goes on."""

import sys
from collections.abc import Iterator
from contextlib import ExitStack
from pathlib import Path
from typing import Any

import pytest

from tests.live.cramped import Cramp, cramps, no_space_left, small_disk
from tests.live.lesson import Lesson, gathered
from tests.serving import StartServer

pytestmark = pytest.mark.skipif(
    sys.platform != "linux", reason="what a running process may write is limited by way of Linux"
)


@pytest.fixture(params=cramps(), ids=lambda cramp: cramp.__name__)
def cramp(request: pytest.FixtureRequest) -> Cramp:
    made: Cramp = request.param
    return made


@pytest.fixture
def lesson(cramp: Cramp, start_server: StartServer, tmp_path: Path) -> Iterator[Lesson]:
    """Ada and Bo before an open round, on a disk that can be filled."""
    data = tmp_path / "data"
    data.mkdir()
    with ExitStack() as disk:
        if cramp is no_space_left:
            disk.enter_context(small_disk(data))
        server = start_server(data)
        lesson = gathered(server, ["ada", "bo"], families=["nerve"])
        lesson.open_next()
        yield lesson
        lesson.hang_up()
        server.stop()


def test_while_the_disk_is_full_nothing_is_acknowledged_and_afterwards_all_goes_on(
    lesson: Lesson, cramp: Cramp, start_server: StartServer
) -> None:
    lesson.answer("ada")
    with cramp(lesson.server):
        refused = answered_until_refused(lesson)
        assert (refused["result"], refused["code"]) == ("failed", "not_stored")
        assert refused["text"].startswith("The server could not save that; nothing was changed.")
        before = lesson.logged()
        assert lesson.host.say("close_round", round=1)["code"] == "not_stored"
        assert lesson.host.done("show_view")["desk"]["public"]["phase"] == "answering"
        assert lesson.logged() == before
        assert_kept(lesson)
    lesson.answer("bo", wrong=True)
    lesson.restart(start_server)
    assert_kept(lesson)
    lesson.step("close_round")
    assert lesson.logged().phase == "closed"


def answered_until_refused(lesson: Lesson) -> dict[str, Any]:
    """Bo answers again and again: a page of the file may have had some room left."""
    for number in range(200):
        choice = ["ABC"[number % 3]]
        reply = lesson.seats["bo"].say("submit_answer", round=1, choice=choice)
        if reply["code"] == "slow_down":
            continue
        if reply["result"] != "done":
            return reply
        lesson.said["bo", 1] = {"choice": choice, "typed": []}
    raise AssertionError("the disk was not full")


def assert_kept(lesson: Lesson) -> None:
    room = lesson.logged()
    kept = {room.players[who].handle.lower(): answer.choice for who, answer in room.rounds[0].answers.items()}
    assert kept == {who: tuple(said["choice"]) for (who, _), said in lesson.said.items()}
