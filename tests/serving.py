"""A real quizroom server in a process of its own, as a teacher starts it."""

import os
import re
import subprocess
import sys
import time
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import partial
from pathlib import Path
from types import MappingProxyType
from typing import Protocol

from quizroom.storage.addresses import embedded_database, usable_database_url
from tests.forked import fork_server

READY = re.compile(r"quizroom is ready at (http://\S+)")
DESK_LINK = re.compile(r"http://\S+/desk/enter/\S+")
START_LIMIT_S = 120.0
CHECKOUT = Path(__file__).resolve().parent.parent


class Process(Protocol):
    """What tests do with a server's process; see `subprocess.Popen`."""

    @property
    def pid(self) -> int: ...
    @property
    def returncode(self) -> int | None: ...
    def poll(self) -> int | None: ...
    def wait(self, timeout: float | None = None) -> int: ...
    def send_signal(self, how: int, /) -> None: ...
    def terminate(self) -> None: ...
    def kill(self) -> None: ...


@dataclass(frozen=True)
class Server:
    """One running server: where it answers, how the host enters, where its data and its words lie."""

    address: str
    desk_link: str
    data: Path
    log: Path
    process: Process
    database_url: str = ""

    @property
    def port(self) -> int:
        """The port it listens on, so that a second start can take the same one."""
        return int(self.address.rpartition(":")[2])

    def kill(self) -> None:
        """End it as a power cut does: kill -9."""
        self.process.kill()
        self.process.wait()

    def stop(self) -> None:
        """End it as Ctrl-C does, and insist after five seconds."""
        self.process.terminate()
        try:
            self.process.wait(timeout=5)
        except subprocess.TimeoutExpired:
            self.kill()


StartServer = Callable[..., Server]


def start(
    data: Path,
    *,
    port: int = 0,
    arguments: tuple[str, ...] = (),
    python: str = "",
    settings: Mapping[str, str] = MappingProxyType({}),
    first: Path | None = None,
) -> Server:
    """Start `quizroom serve` over the data folder and wait until it says that it is ready.

    `settings` are more variables of its environment. With a `python` the server is a program started whole
    by that one, and so it is with a setting for the interpreter; else it is forked from a process that has
    everything loaded, and `first` is a program that it runs before it becomes a server.

    Fails with the server's own words when it ends first, or is not ready in two minutes.
    """
    log = data.with_name(f"{data.name}.log")
    log.touch()
    said_before = log.stat().st_size
    command = ["serve", "--port", str(port), "--data", str(data), *arguments]
    environment = {**os.environ, "PYTHONUNBUFFERED": "1", **settings}
    # what is meant for the interpreter, such as PYTHONPATH, is read by one that starts anew alone
    whole = python or (sys.executable if any(name.startswith("PYTHON") for name in settings) else "")
    start_process = partial(_whole_program, whole) if whole else partial(fork_server, first=first)
    process: Process = start_process(command, environment, log)
    database_url = usable_database_url(
        environment.get("QUIZROOM_DATABASE_URL", "") or embedded_database(data)
    )
    said, deadline = "", time.monotonic() + START_LIMIT_S
    while time.monotonic() < deadline:
        said = log.read_bytes()[said_before:].decode()
        ready, desk_link = READY.search(said), DESK_LINK.search(said)
        if ready and desk_link:
            return Server(ready[1], desk_link[0], data, log, process, database_url)
        if process.poll() is not None:
            raise AssertionError(f"the server ended with exit code {process.returncode}:\n{said}")
        time.sleep(0.02)
    process.kill()
    raise AssertionError(f"the server was not ready after {START_LIMIT_S:.0f} s:\n{said}")


def _whole_program(python: str, command: list[str], environment: Mapping[str, str], log: Path) -> Process:
    with log.open("ab") as words:
        return subprocess.Popen(
            [python, "-m", "quizroom", *command], stdout=words, stderr=words, env=environment, cwd=CHECKOUT
        )
