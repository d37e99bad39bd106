"""The limit for open files is raised as far as the machine allows, and said when that is not enough."""

import subprocess
import sys

import pytest

from tests.serving import CHECKOUT

TRY = """
import resource, sys
hard = int(sys.argv[2])
resource.setrlimit(resource.RLIMIT_NOFILE, (100, hard))
from quizroom.open_files import raise_file_limit
print(repr(raise_file_limit(int(sys.argv[1]))), resource.getrlimit(resource.RLIMIT_NOFILE)[0])
"""


def tried(connections: int, *, hard: int) -> str:
    command = [sys.executable, "-c", TRY, str(connections), str(hard)]
    return subprocess.run(command, capture_output=True, text=True, check=True, cwd=CHECKOUT).stdout.strip()


@pytest.mark.skipif(sys.platform == "win32", reason="no such limit on Windows")
def test_the_limit_is_raised_to_what_is_needed() -> None:
    assert tried(500, hard=1000) == "'' 1000"


@pytest.mark.skipif(sys.platform == "win32", reason="no such limit on Windows")
def test_where_the_machine_allows_less_it_is_said_what_to_do() -> None:
    said = tried(5000, hard=1000)
    assert "ulimit -n 5200" in said
    assert said.endswith(" 1000")
