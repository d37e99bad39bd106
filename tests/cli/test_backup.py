"""`quizroom backup` and `quizroom restore`, as an operator calls them."""

from datetime import UTC, datetime
from pathlib import Path

import pytest
from click.testing import CliRunner
from sqlalchemy import create_engine

from quizroom.cli import main
from quizroom.cli.backup import outdated
from quizroom.storage.database import open_database
from quizroom.storage.event_log import SqlEventLog
from tests.cli.test_commands import refused, run
from tests.storage.databases import url_in
from tests.storage.entries import laid_out


def used_folder(folder: Path) -> Path:
    folder.mkdir()
    engine = open_database(url_in(folder))
    SqlEventLog(engine).append([laid_out("r1")])
    engine.dispose()
    return folder


def test_a_server_moves_to_another_folder(tmp_path: Path) -> None:
    old, new, file = used_folder(tmp_path / "old"), tmp_path / "new", tmp_path / "kept.gz"
    said = run("backup", str(file), "--data", str(old)).output
    assert "3 rows (events 1, listed_reviews 1, rooms 1)" in said
    assert file.stat().st_mode & 0o077 == 0
    assert "Restored as of 20" in run("restore", str(file), "--data", str(new)).output
    assert SqlEventLog(create_engine(url_in(new))).unfinished_rooms() == ("r1",)


def test_a_folder_in_use_is_refused_and_what_to_do_is_said(tmp_path: Path) -> None:
    old, file = used_folder(tmp_path / "old"), tmp_path / "kept.gz"
    run("backup", str(file), "--data", str(old))
    said = refused("restore", str(file), "--data", str(old))
    assert "in use" in said
    assert "empty data folder" in said


def test_a_spoilt_file_is_named(tmp_path: Path) -> None:
    spoilt = tmp_path / "spoilt.gz"
    spoilt.write_bytes(b"nothing of the kind")
    assert f"{spoilt}: The file cannot be read" in refused(
        "restore", str(spoilt), "--data", str(tmp_path / "d")
    )


def test_backups_in_a_folder_are_removed_when_their_time_is_over(tmp_path: Path) -> None:
    kept = tmp_path / "kept"
    kept.mkdir()
    old, other = kept / "quizroom-20010101T000000Z.backup.gz", kept / "notes.txt"
    old.touch()
    other.touch()
    said = run("backup", str(kept), "--data", str(used_folder(tmp_path / "old")), "--keep-days", "30").output
    assert f"{old}: removed" in said
    assert not old.exists()
    assert other.exists()
    assert len(list(kept.iterdir())) == 2


def test_a_backup_just_as_old_as_allowed_stays(tmp_path: Path) -> None:
    (tmp_path / "quizroom-20311020T093000Z.backup.gz").touch()
    assert outdated(tmp_path, datetime(2031, 10, 20, 9, 30, tzinfo=UTC)) == []
    assert len(outdated(tmp_path, datetime(2031, 10, 20, 9, 30, 1, tzinfo=UTC))) == 1


def test_a_number_of_days_without_a_folder_is_refused(tmp_path: Path) -> None:
    file = tmp_path / "file.gz"
    said = refused("backup", str(file), "--data", str(used_folder(tmp_path / "old")), "--keep-days", "3")
    assert "is no folder: make it first" in said
    assert not file.exists()


def test_what_is_there_already_is_not_written_over(tmp_path: Path) -> None:
    file = tmp_path / "kept.gz"
    file.write_bytes(b"last week's")
    said = refused("backup", str(file), "--data", str(used_folder(tmp_path / "old")))
    assert f"{file} is there already" in said
    assert "Give another name, or a folder" in said
    assert file.read_bytes() == b"last week's"


@pytest.mark.parametrize("inside", ["none", "a file"])
def test_a_place_that_cannot_be_written_is_named(tmp_path: Path, inside: str) -> None:
    (tmp_path / "a file").touch()
    target = tmp_path / inside / "kept.gz"
    said = refused("backup", str(target), "--data", str(used_folder(tmp_path / "old")))
    assert f"{target} cannot be written: No" in said


def test_a_folder_without_a_database_gives_no_empty_backup(tmp_path: Path) -> None:
    (wrong := tmp_path / "wrong").mkdir()
    said = refused("backup", str(tmp_path / "kept.gz"), "--data", str(wrong))
    assert f"The data folder {wrong} cannot be used: there is no database in it" in said
    assert [path.name for path in tmp_path.rglob("*")] == ["wrong"]


def test_a_backup_goes_through_a_pipe(tmp_path: Path) -> None:
    words = ["backup", "-", "--data", str(used_folder(tmp_path / "old"))]
    made = CliRunner().invoke(main, words, catch_exceptions=False)
    assert made.stderr == "-: 3 rows (events 1, listed_reviews 1, rooms 1)\n"
    back = ["restore", "-", "--data", str(tmp_path / "new")]
    assert CliRunner().invoke(main, back, input=made.stdout_bytes).exit_code == 0
    assert SqlEventLog(create_engine(url_in(tmp_path / "new"))).unfinished_rooms() == ("r1",)
