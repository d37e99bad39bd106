"""Servers forked from a process that has everything loaded: `tests/loaded.py`."""

import atexit
import json
import os
import shutil
import signal
import subprocess
import sys
import tempfile
import time
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from threading import Lock

CHECKOUT = Path(__file__).resolve().parent.parent
LOOKED_EVERY_S = 0.01
ONE_AT_A_TIME = Lock()
"""Two threads of a test may start a server each: neither may take the other's number and wait for ever."""


@dataclass(frozen=True)
class Forked:
    """A process that is nobody's child here, with what tests need of `subprocess.Popen`."""

    pid: int
    ended: Path
    """Where its exit code stands once it has ended."""

    @property
    def returncode(self) -> int | None:
        """Its exit code; minus the signal's number if one ended it, None while it runs."""
        return self.poll()

    def poll(self) -> int | None:
        """The same."""
        return int(self.ended.read_text(encoding="ascii")) if self.ended.exists() else None

    def wait(self, timeout: float | None = None) -> int:
        """Its exit code, once it has ended; raises what `Popen.wait` raises after so many seconds."""
        deadline = time.monotonic() + (float("inf") if timeout is None else timeout)
        while (code := self.poll()) is None:
            if time.monotonic() > deadline:
                raise subprocess.TimeoutExpired(str(self.pid), timeout or 0.0)
            time.sleep(LOOKED_EVERY_S)
        return code

    def send_signal(self, how: int) -> None:
        """Send a signal, unless it has ended."""
        if self.poll() is None:
            os.kill(self.pid, how)

    def terminate(self) -> None:
        """Ask it to end."""
        self.send_signal(signal.SIGTERM)

    def kill(self) -> None:
        """End it at once."""
        self.send_signal(signal.SIGKILL)


def fork_server(
    arguments: list[str], environment: Mapping[str, str], log: Path, *, first: Path | None = None
) -> Forked:
    """Run `quizroom` with these arguments in this environment; its words are added to the log, a file.

    `first` is a program that its process runs before.
    """
    order = {"arguments": arguments, "environment": dict(environment), "log": str(log)}
    order["first"] = "" if first is None else str(first)
    with ONE_AT_A_TIME:
        loader, folder = _loader()
        assert loader.stdin is not None
        assert loader.stdout is not None
        loader.stdin.write(json.dumps(order) + "\n")
        loader.stdin.flush()
        pid = int(loader.stdout.readline())
    return Forked(pid=pid, ended=folder / str(pid))


@cache
def _loader() -> tuple[subprocess.Popen[str], Path]:
    """The process that forks, one for all that this process starts, and the folder of exit codes."""
    folder = Path(tempfile.mkdtemp(prefix="quizroom-forked-"))
    loader = subprocess.Popen(
        [sys.executable, "-m", "tests.loaded", str(folder)],
        cwd=CHECKOUT,
        env={**os.environ, "PYTHONUNBUFFERED": "1"},
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        text=True,
    )
    atexit.register(_end, loader, folder)
    return loader, folder


def _end(loader: subprocess.Popen[str], folder: Path) -> None:
    loader.communicate()
    shutil.rmtree(folder)
