"""No green thread gives way in the middle of a write to SQLite, whatever is kept."""

import re
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

from tests import serving
from tests.live.forms import wrong_sign_in
from tests.live.lesson import gathered
from tests.live.test_second_look import KEY, ask
from tests.live.watched_writes import GAVE_WAY, WATCHED
from tests.serving import CHECKOUT, Server

WATCHED_PYTHON = """#!/bin/sh
shift 2  # -m quizroom
exec {python} -m tests.live.watched_writes "$@"
"""


@pytest.fixture
def watched(tmp_path: Path) -> Iterator[Server]:
    """A server that says when it gives way."""
    python = tmp_path / "python"
    python.write_text(WATCHED_PYTHON.format(python=sys.executable))
    python.chmod(0o755)
    server = serving.start(tmp_path / "data", python=str(python))
    yield server
    server.stop()


def test_things_of_many_kinds_are_written_without_giving_way(watched: Server) -> None:
    lesson = gathered(watched, ["ada", "bo"])
    for voice in lesson.seats.values():
        voice.done("keep_results", player_key=KEY)
    for wrong in (True, False):
        lesson.open_next()
        lesson.answer("ada", wrong=wrong)
        lesson.seats["bo"].done("flag_item", round=lesson.round, text="Is it not another?")
        lesson.step("close_round")
        lesson.step("show_record")
    lesson.step("strike_item")
    lesson.step("end_review")
    lesson.host.done("rename_review", room=lesson.room, title="Forearm once more")
    lesson.host.done("copy_review", room=lesson.room, dealt="same")
    assert ask(watched, "GET", f"second-look/{lesson.room}")["looks"]
    wrong_sign_in(watched, "Dr. M. Sorrel")
    lesson.hang_up()
    watched.stop()
    said = watched.log.read_text(encoding="utf-8")
    assert GAVE_WAY not in said, said[said.index(GAVE_WAY) :]
    (writes,) = re.findall(f"{WATCHED}([0-9]+)", said)
    assert int(writes) > 20


def test_the_watch_sees_who_gives_way() -> None:
    command = [sys.executable, "-m", "tests.live.watched_writes", "give-way"]
    ran = subprocess.run(command, capture_output=True, text=True, check=True, cwd=CHECKOUT, timeout=60)
    assert ran.stderr.count(GAVE_WAY) == 1
    assert "in give_way" in ran.stderr
    assert f"{WATCHED}1" in ran.stderr
