"""The data folder: whether it can be written, who else may read it, how much room it has, what it lies on."""

import os
import shutil
import tempfile
from collections.abc import Iterator
from pathlib import Path

from quizroom.doctor.finding import Finding, fault, remark, well

ABOUT = "Data folder"
MIB = 1024 * 1024
LITTLE, SCARCE = 1024 * MIB, 100 * MIB
"""Free space. A class of 300 through 30 rounds takes 2.2 MB (handbook, capacity page)."""
OVER_A_NETWORK = frozenset(
    ("9p", "afs", "ceph", "cifs", "fuse.glusterfs", "fuse.sshfs", "glusterfs", "nfs", "nfs4", "smb3", "smbfs")
)
IN_MEMORY = frozenset(("ramfs", "tmpfs"))
MOUNTS = Path("/proc/self/mountinfo")


def folder_findings(folder: Path, *, holds_database: bool) -> Iterator[Finding]:
    """What is found of a data folder; only SQLite keeps its data in it."""
    yield _written(folder)
    if folder.is_dir() and os.name == "posix" and folder.stat().st_mode & 0o077:
        yield remark(ABOUT, "Others on this machine may look into it.", f"chmod 700 {folder}")
    if not holds_database:
        return
    there = _nearest(folder)
    room = shutil.disk_usage(there)
    if room.total:
        yield disk_finding(free=room.free, used=_size(folder))
    if MOUNTS.exists():
        yield from file_system_findings(file_system_of(there, MOUNTS.read_text("utf-8", "replace")))


def disk_finding(*, free: int, used: int) -> Finding:
    """What so many free bytes mean beside a database of so many."""
    said = f"{free // MIB} MiB are free; the database takes {-(-used // MIB)}."
    if free < SCARCE:
        return fault("Disk", said, "Make room: once it is full, no answer can be taken.")
    # VACUUM needs up to twice the size of the file (SQLite documentation, "VACUUM").
    if free < max(LITTLE, 2 * used):
        return remark(
            "Disk", said, "Make room: what is erased leaves the file only where it can be written anew."
        )
    return well("Disk", said)


def file_system_findings(kind: str) -> Iterator[Finding]:
    """What a kind of file system means for SQLite; empty stands for unknown."""
    if kind in OVER_A_NETWORK:
        # "WAL does not work over a network filesystem" (SQLite documentation, "Write-Ahead Logging")
        yield fault(
            ABOUT,
            f"It lies on a network ({kind}), on which SQLite's log does not work.",
            "Put it on a disk of this machine with QUIZROOM_DATA, or take PostgreSQL.",
        )
    if kind in IN_MEMORY:
        yield fault(
            ABOUT,
            f"It lies in memory ({kind}): all is gone when the machine or the container ends.",
            "Put it on a disk or a volume with QUIZROOM_DATA.",
        )


def file_system_of(path: Path, mounts: str) -> str:
    """The kind of file system that a path lies on, by Linux' table of mounts (proc(5), mountinfo)."""
    found: tuple[int, str] = (-1, "")
    for line in mounts.splitlines():
        fields, _, rest = line.partition(" - ")
        point = Path(fields.split(" ")[4].replace("\\040", " "))
        if path.resolve().is_relative_to(point):
            found = max(found, (len(point.parts), rest.split(" ")[0]), key=lambda one: one[0])
    return found[1]


def _written(folder: Path) -> Finding:
    try:
        if not folder.exists():
            with tempfile.TemporaryFile(dir=_nearest(folder)):
                return well(ABOUT, f"{folder} is made by the first start.")
        with tempfile.TemporaryFile(dir=folder) as trial:
            trial.write(b"\x00" * 4096)
            trial.flush()
            os.fsync(trial.fileno())
    except OSError as error:
        return fault(
            ABOUT,
            f"{folder} cannot be written: {error.strerror}.",
            "Give it to the user that runs quizroom (chown), or name another with QUIZROOM_DATA or --data.",
        )
    return well(ABOUT, f"{folder} can be written.")


def _nearest(folder: Path) -> Path:
    return next(path for path in (folder.absolute(), *folder.absolute().parents) if path.exists())


def _size(folder: Path) -> int:
    return sum(path.stat().st_size for path in folder.glob("quizroom.sqlite*"))
