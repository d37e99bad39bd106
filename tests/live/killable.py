"""A server that is killed again and again, and forked anew from a process that has everything loaded."""

import os
import signal
import subprocess
import sys
import time
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

from tests.services import free_port
from tests.serving import CHECKOUT


@dataclass
class Killable:
    """One server at a time, always at the same port and over the same data."""

    loader: subprocess.Popen[str]
    port: int
    server: int = 0
    key: str = ""
    begun_at: float = 0.0
    """When it was last told to start, by `time.monotonic`."""

    def begin(self) -> None:
        """Order a start, and wait for no more than its process."""
        assert self.loader.stdin is not None
        self.begun_at = time.monotonic()
        self.loader.stdin.write(f"{self.port}\n")
        self.loader.stdin.flush()
        # one that was killed just as it was ready may have said so without being heard
        while len(said := self._said()) != 1:
            pass
        self.server = int(said[0])

    def start(self) -> None:
        """Start it and wait until it is ready."""
        self.begin()
        said = self._said()
        assert int(said[0]) == self.server
        self.key = said[2]

    def kill(self) -> None:
        """End it as a power cut does."""
        os.kill(self.server, signal.SIGKILL)

    def _said(self) -> list[str]:
        assert self.loader.stdout is not None
        words = self.loader.stdout.readline().split()
        assert words, "the process that forks servers has ended"
        return words


@contextmanager
def killable_over(store: str, folder: Path) -> Iterator[Killable]:
    """A started one over a database."""
    environment = {**os.environ, "QUIZROOM_DATA": str(folder), "QUIZROOM_DATABASE_URL": store}
    command = [sys.executable, "-m", "tests.live.preloaded"]
    pipes = {"stdin": subprocess.PIPE, "stdout": subprocess.PIPE}
    with (
        (folder / "words").open("w") as words,
        subprocess.Popen(command, text=True, stderr=words, env=environment, cwd=CHECKOUT, **pipes) as loader,  # type: ignore[call-overload]  # pipes are two words
    ):
        server = Killable(loader, free_port())
        server.start()
        yield server
        server.kill()
        loader.terminate()
