"""The contract of the list of reviews: titles as the log has them, plans, what was put away."""

import io
from datetime import datetime
from pathlib import Path

import pytest
from sqlalchemy import Engine, delete

from quizroom.room.host_events import ReviewHandedOver, ReviewRenamed
from quizroom.service.ports import EventLog
from quizroom.service.review_list import ListedReview, ReviewShelf
from quizroom.storage.backup import restore_backup, write_backup
from quizroom.storage.database import open_database
from quizroom.storage.event_log import SqlEventLog
from quizroom.storage.kept_reviews import SqlReviews
from quizroom.storage.list_tables import listed_reviews
from quizroom.storage.migrations.versions import v0007_review_list
from quizroom.storage.review_shelf import SqlReviewShelf
from quizroom.storage.shelf_memory import MemoryReviewShelf
from tests.room.samples import after
from tests.storage.databases import OpenHere
from tests.storage.entries import ended, entry, laid_out, opened


@pytest.fixture
def shelf(database: Engine | None, log: EventLog) -> ReviewShelf:
    """The list over the log of the same kind of store."""
    return MemoryReviewShelf(log) if database is None else SqlReviewShelf(database)


def rooms(shelf: ReviewShelf, host: str = "owner") -> list[str]:
    return [listed.room for listed in shelf.of_host(host)]


class TestReviewShelf:
    """What `service.review_list.ReviewShelf` promises."""

    def test_the_reviews_of_a_host_are_listed_newest_first(self, shelf: ReviewShelf, log: EventLog) -> None:
        log.append([laid_out("a", at=after(0)), laid_out("b", at=after(5)), laid_out("c", host="sorrel")])
        assert rooms(shelf) == ["b", "a"]
        assert shelf.of_host("owner")[1] == ListedReview(
            room="a",
            title="Shoulder and arm",
            course="HHC-KN 232 Muscles and Movement",
            rounds=1,
            prepared_at=after(0),
        )

    def test_reviews_without_a_host_are_on_no_list(self, shelf: ReviewShelf, log: EventLog) -> None:
        log.append([laid_out("group", host="")])
        assert rooms(shelf) == []

    def test_titles_doors_and_ends_follow_the_log(self, shelf: ReviewShelf, log: EventLog) -> None:
        renamed = entry("a", 3, ReviewRenamed(title="Arm", at=after(1)))
        log.append([laid_out("a"), opened("a", "CDFHJ"), renamed])
        listed = shelf.of_host("owner")[0]
        assert (listed.title, listed.door_opened, listed.finished_at) == ("Arm", True, None)
        log.append([ended("a", 4)])
        assert shelf.of_host("owner")[0].finished_at == after(2)

    def test_a_review_that_is_handed_over_is_on_the_list_of_the_other(
        self, shelf: ReviewShelf, log: EventLog
    ) -> None:
        log.append([laid_out("a"), entry("a", 2, ReviewHandedOver(host="sorrel", at=after(1)))])
        assert (rooms(shelf), rooms(shelf, "sorrel")) == ([], ["a"])

    def test_a_plan_and_the_archive_are_kept_and_taken_back(self, shelf: ReviewShelf, log: EventLog) -> None:
        log.append([laid_out("a")])
        shelf.plan("a", after(3600), opens_itself=True)
        shelf.archive("a", after(7))
        listed = shelf.of_host("owner")[0]
        assert (listed.planned_at, listed.opens_itself, listed.archived_at) == (after(3600), True, after(7))
        shelf.plan("a", None, opens_itself=False)
        shelf.archive("a", None)
        listed = shelf.of_host("owner")[0]
        assert (listed.planned_at, listed.opens_itself, listed.archived_at) == (None, False, None)

    def test_doors_are_due_from_the_moment_that_is_planned(self, shelf: ReviewShelf, log: EventLog) -> None:
        names = ("due", "by_hand", "away", "open", "late", "early")
        log.append([laid_out(name) for name in names] + [opened("open", "CDFHJ")])
        for name in names:
            shelf.plan(name, after({"late": 101, "early": 0}.get(name, 100)), opens_itself=name != "by_hand")
        shelf.archive("away", after(1))
        due: list[tuple[datetime, tuple[str, ...]]] = [
            (after(until), shelf.doors_due(after(0), after(until))) for until in (99.9, 100, 101)
        ]
        assert [found for _, found in due] == [(), ("due",), ("due", "late")]


def test_an_erased_review_is_on_the_list_no_more(open_here: OpenHere) -> None:
    engine = open_here()
    SqlEventLog(engine).append([laid_out("a")])
    SqlReviews(engine).erase_review("a")
    with engine.connect() as connection:
        assert connection.execute(listed_reviews.select()).all() == []


def test_reviews_from_before_there_was_a_list_are_put_on_it(open_here: OpenHere) -> None:
    engine = open_here()
    SqlEventLog(engine).append([laid_out("a"), laid_out("g", host="")])
    before = SqlReviewShelf(engine).of_host("owner")
    with engine.begin() as connection:
        connection.execute(delete(listed_reviews))
        v0007_review_list.list_what_is_there(connection)
        v0007_review_list.list_what_is_there(connection)
    assert SqlReviewShelf(engine).of_host("owner") == before


def test_reviews_of_a_backup_from_before_there_was_a_list_are_put_on_it(
    open_here: OpenHere, tmp_path: Path
) -> None:
    engine, elsewhere = open_here(), open_database(f"sqlite:///{tmp_path / 'elsewhere.sqlite'}")
    SqlEventLog(engine).append([laid_out("a"), laid_out("g", host="")])
    before, backup = SqlReviewShelf(engine).of_host("owner"), io.BytesIO()
    with engine.begin() as connection:
        connection.execute(delete(listed_reviews))
    write_backup(engine, backup, now=after(0), program="test")
    backup.seek(0)
    restore_backup(elsewhere, backup)
    assert SqlReviewShelf(elsewhere).of_host("owner") == before
    elsewhere.dispose()
