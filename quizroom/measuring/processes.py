"""A server in a process of its own, held to one core, and what it costs, from /proc (Linux, proc(5))."""

import os
import re
import subprocess
import sys
import time
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

START_LIMIT_S = 60.0


class CannotMeasure(Exception):
    """This machine, or this server, cannot be measured; the text says why and what to do."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Running:
    """A server that has said where it listens."""

    pid: int
    port: int
    said: str

    def cpu_s(self) -> float:
        """Seconds that all its threads have run so far."""
        tasks = Path(f"/proc/{self.pid}/task").iterdir()
        return sum(int((task / "schedstat").read_text().split()[0]) for task in tasks) / 1e9

    def kib(self) -> int:
        """Memory that lies in RAM, in KiB."""
        found = re.search(r"VmRSS:\s+(\d+) kB", Path(f"/proc/{self.pid}/status").read_text())
        return int(found[1]) if found else 0


def two_cores() -> tuple[set[int], set[int]]:
    """One core for the servers and the others for the load.

    Raises:
        CannotMeasure: there is one core only, or this is not Linux.
    """
    if not sys.platform.startswith("linux"):
        raise CannotMeasure("`bench room` reads CPU and memory from /proc and needs Linux.")
    cores = sorted(os.sched_getaffinity(0))
    if len(cores) < 2:
        raise CannotMeasure("`bench room` needs two cores: one for the server, one for the load.")
    return {cores[0]}, set(cores[1:])


@contextmanager
def started(
    arguments: Sequence[str], *, cores: set[int], ready: str, folder: Path, settings: dict[str, str]
) -> Iterator[Running]:
    """Run `python -m ARGUMENTS` on these cores; `ready` is a pattern whose first group is the port.

    Raises:
        CannotMeasure: it did not come up; with its own last words.
    """
    log = folder / f"{arguments[0]}.log"
    with log.open("wb") as words:
        process = subprocess.Popen(  # noqa: S603 - this program itself, with words of its own
            [sys.executable, "-m", *arguments],
            stdout=words,
            stderr=words,
            env={**os.environ, **settings, "PYTHONUNBUFFERED": "1"},
        )
    try:
        os.sched_setaffinity(process.pid, cores)
        said = _wait_for(process, log, ready)
        found = re.search(ready, said)
        yield Running(pid=process.pid, port=int(found[1]) if found else 0, said=said)
    finally:
        process.kill()
        process.wait()


def _wait_for(process: subprocess.Popen[bytes], log: Path, ready: str) -> str:
    give_up_at = time.monotonic() + START_LIMIT_S
    while time.monotonic() < give_up_at and process.poll() is None:
        said = log.read_text("utf-8", "replace")
        if re.search(ready, said):
            return said
        time.sleep(0.02)
    raise CannotMeasure(f"A server did not start: {log.read_text('utf-8', 'replace')[-600:]}")
