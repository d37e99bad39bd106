"""Holding servers back to a share of their cores, so that load and database find room on the same machine.

A program of its own, `python -m quizroom.measuring.held_back SHARE PID...`: it stops each process whenever
that has used its share of the time, and lets it go on when there is some left, until it is ended.
"""

import os
import signal
import subprocess
import sys
import time
from collections.abc import Iterator, Sequence
from contextlib import contextmanager, suppress
from pathlib import Path

PERIOD_S = 0.02
"""Who waits saves up no more than the share of so much time."""
LOOK_EVERY_S = 0.001


@contextmanager
def held_back(pids: Sequence[int], share: float) -> Iterator[None]:
    """Let each of these processes run for no more than this share of the time; afterwards freely again."""
    process = subprocess.Popen(  # noqa: S603 - this program itself, with numbers of its own
        [sys.executable, "-m", "quizroom.measuring.held_back", str(share), *map(str, pids)]
    )
    try:
        yield
    finally:
        process.terminate()
        process.wait()
        for pid in pids:
            _tell(pid, signal.SIGCONT)


def main(share: float, pids: Sequence[int]) -> None:
    """Hold them back until this process is ended."""
    left_s = dict.fromkeys(pids, 0.0)
    used_s = {pid: _used_s(pid) for pid in pids}
    before = time.monotonic()
    while True:
        time.sleep(LOOK_EVERY_S)
        now, passed = time.monotonic(), time.monotonic() - before
        before = now
        for pid in pids:
            used = _used_s(pid)
            left_s[pid] = min(left_s[pid] + share * passed - (used - used_s[pid]), share * PERIOD_S)
            used_s[pid] = used
            _tell(pid, signal.SIGCONT if left_s[pid] > 0 else signal.SIGSTOP)


def _used_s(pid: int) -> float:
    """CPU that a process with one busy thread has used until now."""
    with suppress(OSError):
        return int(Path(f"/proc/{pid}/schedstat").read_text("ascii").split()[0]) / 1e9
    return 0.0


def _tell(pid: int, what: signal.Signals) -> None:
    with suppress(ProcessLookupError):
        os.kill(pid, what)


if __name__ == "__main__":
    main(float(sys.argv[1]), [int(pid) for pid in sys.argv[2:]])
