"""The benchmark plays a small room at a real server and at the floor; its numbers are not judged here."""

import os
import subprocess
import sys

import pytest

from tests.serving import CHECKOUT


@pytest.mark.skipif(
    not sys.platform.startswith("linux") or (os.cpu_count() or 1) < 2, reason="Linux, two cores"
)
def test_a_small_room_is_measured_from_joining_to_the_record() -> None:
    command = [sys.executable, "-m", "quizroom", "bench", "room", "--quick", "--players", "20"]
    ended = subprocess.run(command, capture_output=True, text=True, timeout=120, cwd=CHECKOUT, check=False)
    assert ended.returncode == 0, ended.stderr
    head, *rows = ended.stdout.splitlines()
    assert head.split() == ["20", "players", "quizroom", "floor", "ratio"]
    assert len(rows) == 12
    for row in rows:
        value, floor, ratio = map(float, row.split()[-3:])
        assert value > 0
        assert floor > 0
        assert ratio == pytest.approx(value / floor, abs=0.01 * ratio + 0.02)
