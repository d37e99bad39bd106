"""`quizroom retention`, as an operator calls it."""

from dataclasses import replace
from datetime import UTC, datetime
from pathlib import Path

import pytest
from sqlalchemy import create_engine

from quizroom.storage.database import open_database
from quizroom.storage.event_log import SqlEventLog
from quizroom.storage.own_items import SqlOwnItems
from quizroom.storage.pictures import SqlPictures
from quizroom.storage.players import SqlPlayers
from tests.cli.test_commands import run
from tests.questions.own_samples import DRAWING, best
from tests.room.samples import after
from tests.storage.databases import url_in
from tests.storage.entries import ended, laid_out, opened
from tests.storage.test_own_items import SHOWN, SORRELS

LONG_AGO = after(-12 * 365 * 86_400)


def used_folder(folder: Path) -> Path:
    """An old review, and a player who has not been here since."""
    folder.mkdir()
    engine = open_database(url_in(folder))
    log = SqlEventLog(engine)
    log.append([laid_out("old", at=LONG_AGO), opened("old", "CDFHJ")])
    log.append([ended("old", 3)])
    SqlPlayers(engine).see("a" * 64, LONG_AGO)
    engine.dispose()
    return folder


def rooms_in(folder: Path) -> bool:
    return bool(SqlEventLog(create_engine(url_in(folder))).read("old"))


def test_a_dry_run_says_what_would_go_and_erases_nothing(tmp_path: Path) -> None:
    folder = used_folder(tmp_path / "data")
    said = run("retention", "--dry-run", "--data", str(folder)).output
    assert said.splitlines() == [
        "Would erase 0 reviews, 1 player and 0 rosters.",
        "Would erase 0 pictures in no item and no review.",
    ]
    assert SqlPlayers(create_engine(url_in(folder))).known("a" * 64) is not None


def test_what_is_due_goes_and_a_second_run_finds_nothing(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    folder = used_folder(tmp_path / "data")
    assert "0 reviews, 1 player and 0 rosters." in run("retention", "--data", str(folder)).output
    assert "0 reviews, 0 players and 0 rosters." in run("retention", "--data", str(folder)).output
    assert rooms_in(folder)
    monkeypatch.setenv("QUIZROOM_KEEP_PLAYERS_DAYS", "0")
    assert "0 reviews, 0 players and 0 rosters." in run("retention", "--data", str(folder)).output


def test_pictures_in_no_item_and_no_review_go_once_they_are_old(tmp_path: Path) -> None:
    folder = used_folder(tmp_path / "data")
    pictures = SqlPictures(create_engine(url_in(folder)))
    lost, young, in_item = (
        replace(SHOWN, name=name, made_at=at)
        for name, at in (("lost", LONG_AGO), ("young", datetime.now(UTC)), (SHOWN.name, LONG_AGO))
    )
    for picture in (lost, young, in_item):
        pictures.keep(picture)
    own = best(picture=DRAWING)
    SqlOwnItems(create_engine(url_in(folder))).keep(replace(SORRELS, own=own))
    assert "Would erase 1 picture" in run("retention", "--dry-run", "--data", str(folder)).output
    assert "Erased 1 picture in no item and no review." in run("retention", "--data", str(folder)).output
    kept = (pictures.find("lost"), pictures.find("young"), pictures.find(SHOWN.name))
    assert [one is not None for one in kept] == [False, True, True]


def test_old_backups_go_with_what_they_hold(tmp_path: Path) -> None:
    folder, backups = used_folder(tmp_path / "data"), tmp_path / "backups"
    backups.mkdir()
    old, fresh = (backups / f"quizroom-{year}0101T000000Z.backup.gz" for year in (2001, 2099))
    for path in (old, fresh):
        path.touch()
    options = ("retention", "--data", str(folder), "--backups", str(backups))
    assert "would be removed" in run(*options, "--dry-run").output
    assert old.exists()
    assert f"{old}: removed, older than 400 days" in run(*options).output
    assert (old.exists(), fresh.exists()) == (False, True)
