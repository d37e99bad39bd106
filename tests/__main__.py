"""`python3 -m tests`: installs quizroom with its tests' packages into `.venv`, then runs pytest.

Without arguments it runs everything, a file at a time in each of several processes.
"""

import os
import sys

if sys.version_info < (3, 11):  # noqa: UP036 - an older Python must say what is wrong, not show a traceback
    sys.exit(
        "The tests need Python 3.11 or newer, and this is " + sys.version.split()[0] + ". Install a newer one"
        " and call it by its name, for example: python3.13 -m tests"
    )

from quizroom import bootstrap

MOST_PROCESSES = 6


def everything() -> list[str]:
    """What pytest is told. Tests of servers and pages wait more than they compute, so one process more.

    Files are started in the order of `tests/long_files.py`, not by their number of tests.
    """
    processes = min(MOST_PROCESSES, (os.cpu_count() or 1) + 1)
    return ["--numprocesses", str(processes), "--dist", "loadfile", "--no-loadscope-reorder"]


if __name__ == "__main__":
    bootstrap.hand_over("pytest", sys.argv[1:] or everything(), extra="test")
