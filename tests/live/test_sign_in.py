"""Checking a password takes a tenth of a second of pure computing: no player may wait for it."""

import os
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

import pytest

from quizroom.service.hosts import WRONG
from tests import serving
from tests.live.forms import wrong_sign_in
from tests.live.lesson import Lesson, gathered
from tests.services import wait_until

HELD_UP = """
import os
from argon2 import PasswordHasher
from eventlet.patcher import original

open_here, plain = original("os").open, PasswordHasher.hash  # as it is unpatched: the whole thread is held up

def held_up(self, password, **more):
    os.close(open_here({waiting!r}, os.O_CREAT | os.O_WRONLY))
    os.close(open_here({gate!r}, os.O_RDONLY))  # a pipe: nobody passes before another opens it for writing
    return plain(self, password, **more)

PasswordHasher.hash = held_up
"""


@dataclass(frozen=True)
class Gate:
    """Holds every hash of a password up until it is opened."""

    folder: Path

    def close(self) -> None:
        """Let the server that runs the program of this folder first wait here."""
        os.mkfifo(self.folder / "gate")
        named = {"waiting": str(self.folder / "waiting"), "gate": str(self.folder / "gate")}
        (self.folder / "held_up.py").write_text(HELD_UP.format(**named))

    def is_waited_at(self) -> bool:
        """Whether a hash has come here."""
        return (self.folder / "waiting").exists()

    @contextmanager
    def opened(self) -> Iterator[None]:
        """Let through whoever waits and whoever comes."""
        held = os.open(self.folder / "gate", os.O_RDWR)
        yield
        os.close(held)


@pytest.fixture
def gate(tmp_path: Path) -> Gate:
    gate = Gate(tmp_path)
    gate.close()
    return gate


@pytest.fixture
def lesson(gate: Gate) -> Iterator[Lesson]:
    server = serving.start(gate.folder / "data", first=gate.folder / "held_up.py")
    lesson = gathered(server, ["ada", "bo"])
    yield lesson
    lesson.hang_up()
    server.stop()


def test_while_a_password_is_checked_the_class_goes_on(lesson: Lesson, gate: Gate) -> None:
    with ThreadPoolExecutor(2) as hosts:
        asked = [hosts.submit(wrong_sign_in, lesson.server, name) for name in ("Dr. M. Sorrel", "T. Bracken")]
        try:
            wait_until(gate.is_waited_at, "the check of the password")
            lesson.open_next()
            for player in ("ada", "bo"):
                lesson.answer(player)
            lesson.step("close_round")
            lesson.seats["bo"].last("own", lambda own: own["result"] and own["result"]["verdict"] == "right")
            assert not any(each.done() for each in asked)
        finally:
            with gate.opened():
                told = [each.result(30) for each in asked]
        assert all(WRONG in page for page in told)
