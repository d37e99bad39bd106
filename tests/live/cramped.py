"""A running server whose disk is full for a while."""

import os
import subprocess
import sys
from collections.abc import Callable, Iterator
from contextlib import AbstractContextManager, contextmanager
from pathlib import Path

from tests.serving import Server

SMALL_DISK = "size=4m"
CAP_SYS_ADMIN = 1 << 21
"""Its place among capabilities (capabilities(7), linux/capability.h)."""


@contextmanager
def no_longer_file(server: Server) -> Iterator[None]:
    """No file of this server may grow beyond its longest one: its log of writes has no room left.

    The kernel refuses such a write as it refuses one to a full disk, under another name (getrlimit(2)).
    """
    import resource  # noqa: PLC0415 - not on every system

    longest = max(path.stat().st_size for path in server.data.iterdir())
    before = resource.prlimit(server.process.pid, resource.RLIMIT_FSIZE)
    resource.prlimit(server.process.pid, resource.RLIMIT_FSIZE, (longest, before[1]))
    try:
        yield
    finally:
        resource.prlimit(server.process.pid, resource.RLIMIT_FSIZE, before)


@contextmanager
def no_space_left(server: Server) -> Iterator[None]:
    """A file fills the rest of the file system, which must be a small one."""
    filling = server.data / "filling"
    with filling.open("wb", buffering=0) as file:
        try:
            while True:
                file.write(bytes(1024))
        except OSError:
            pass  # that was the last of it
    try:
        yield
    finally:
        filling.unlink()


Cramp = Callable[[Server], AbstractContextManager[None]]


def cramps() -> list[Cramp]:
    """All ways that can be gone here; a file system can be mounted by root alone, if at all."""
    return [no_longer_file, no_space_left] if may_mount() else [no_longer_file]


def may_mount() -> bool:
    """Whether this process may mount a file system (proc(5): CapEff)."""
    if sys.platform != "linux":
        return False
    status = Path("/proc/self/status").read_text(encoding="ascii")
    held = next(int(line.split()[1], 16) for line in status.splitlines() if line.startswith("CapEff"))
    return os.getuid() == 0 and bool(held & CAP_SYS_ADMIN)


@contextmanager
def small_disk(folder: Path) -> Iterator[None]:
    """A file system of few megabytes at this folder."""
    subprocess.run(["mount", "-t", "tmpfs", "-o", SMALL_DISK, "tmpfs", str(folder)], check=True)
    try:
        yield
    finally:
        subprocess.run(["umount", "--lazy", str(folder)], check=True)
