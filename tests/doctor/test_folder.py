"""What is found of a data folder."""

from pathlib import Path

import pytest

from quizroom.doctor.folder import (
    MIB,
    disk_finding,
    file_system_findings,
    file_system_of,
    folder_findings,
)

MOUNTS = """\
22 1 259:1 / / rw,relatime shared:1 - ext4 /dev/nvme0n1p1 rw
31 22 0:27 / /srv rw,relatime shared:9 - tmpfs tmpfs rw
40 31 0:44 /export /srv/class\\040data rw shared:20 master:3 - nfs4 server:/export rw,vers=4.2
"""
"""Lines as in proc(5), /proc/pid/mountinfo, with and without optional fields."""


def kinds(folder: Path) -> list[tuple[str, str]]:
    return [(finding.kind, finding.about) for finding in folder_findings(folder, holds_database=False)]


def test_a_folder_of_ones_own_is_well_and_left_as_it_is(tmp_path: Path) -> None:
    folder = tmp_path / "data"
    assert kinds(folder) == [("well", "Data folder")]
    folder.mkdir(mode=0o700)
    assert kinds(folder) == [("well", "Data folder")]
    assert list(folder.iterdir()) == []


def test_a_folder_that_others_may_read_is_remarked(tmp_path: Path) -> None:
    tmp_path.chmod(0o755)
    assert kinds(tmp_path) == [("well", "Data folder"), ("remark", "Data folder")]


@pytest.mark.skipif(not Path("/proc").exists(), reason="a folder in which even root cannot write: Linux")
@pytest.mark.parametrize("folder", [Path("/proc"), Path("/proc/quizroom/data")])
def test_a_folder_that_cannot_be_written_is_a_fault(folder: Path) -> None:
    first = next(folder_findings(folder, holds_database=True))
    assert (first.kind, first.about) == ("fault", "Data folder")
    assert f"{folder} cannot be written" in first.said
    assert "QUIZROOM_DATA" in first.remedy


@pytest.mark.parametrize(
    "free,used,kind",
    [
        (99 * MIB, 0, "fault"),
        (100 * MIB, 0, "remark"),
        (1024 * MIB, 0, "well"),
        (3000 * MIB, 1501 * MIB, "remark"),
        (3000 * MIB, 1500 * MIB, "well"),
    ],
)
def test_room_on_the_disk(free: int, used: int, kind: str) -> None:
    assert disk_finding(free=free, used=used).kind == kind


@pytest.mark.parametrize(
    "path,kind",
    [("/home/me", "ext4"), ("/srv/other", "tmpfs"), ("/srv/class data/here", "nfs4"), ("/srvs", "ext4")],
)
def test_the_innermost_mount_counts(path: str, kind: str) -> None:
    assert file_system_of(Path(path), MOUNTS) == kind


@pytest.mark.parametrize("kind,word", [("nfs4", "network"), ("cifs", "network"), ("tmpfs", "memory")])
def test_sqlite_belongs_on_a_disk_of_the_machine(kind: str, word: str) -> None:
    (found,) = file_system_findings(kind)
    assert found.kind == "fault"
    assert word in found.said


@pytest.mark.parametrize("kind", ["ext4", "overlay", "xfs", ""])
def test_disks_are_well(kind: str) -> None:
    assert list(file_system_findings(kind)) == []
