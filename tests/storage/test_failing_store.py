"""A store that fails: nothing is half written, and the failure has a name."""

from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from sqlalchemy import Engine, text

from quizroom.service.ports import NotStored, VersionTaken
from quizroom.storage.accounts import SqlAccounts, SqlHeartbeat
from quizroom.storage.class_choices import SqlClassChoices
from quizroom.storage.database import open_database
from quizroom.storage.event_codec import UnreadableEvent
from quizroom.storage.event_log import SqlEventLog
from quizroom.storage.look_store import SqlLookStore
from quizroom.storage.schema import metadata
from tests.room.samples import after
from tests.storage.databases import OpenHere, full_disk, read_only, url_in
from tests.storage.entries import entry, laid_out


@pytest.fixture(params=[full_disk, read_only])
def failing(request: pytest.FixtureRequest, tmp_path: Path, open_here: OpenHere) -> Iterator[Engine]:
    spoil: Callable[[Path], Engine] = request.param
    SqlEventLog(open_here()).append([laid_out("a"), entry("a", 2)])
    spoilt = spoil(tmp_path)
    yield spoilt
    spoilt.dispose()


def test_a_turn_that_does_not_fit_is_not_stored_at_all(failing: Engine) -> None:
    log = SqlEventLog(failing)
    with pytest.raises(NotStored) as failure:
        log.append([entry("a", 3), *(laid_out(f"room-{number}") for number in range(40))])
    assert failure.value.cause
    assert len(log.read("a")) == 2
    assert log.unfinished_rooms() == ("a",)


def test_a_read_only_store_says_so_for_everything_that_is_written(tmp_path: Path) -> None:
    engine = read_only(tmp_path)
    accounts, heart = SqlAccounts(engine), SqlHeartbeat(engine)
    writes: tuple[Callable[[], object], ...] = (
        lambda: accounts.add_entry_key("k", "owner", after(1)),
        lambda: accounts.spend_entry_key("k", after(1)),
        lambda: accounts.add_host_token("t", "owner", after(1)),
        lambda: heart.beat(after(1)),
    )
    for write in writes:
        with pytest.raises(NotStored):
            write()
    assert accounts.host_of_token("t", made_after=after(0)) is None
    assert heart.last_beat() is None
    engine.dispose()


def test_a_store_that_cannot_be_read_says_so(open_here: OpenHere) -> None:
    engine = open_here()
    metadata.drop_all(engine)
    looks, choices = SqlLookStore(engine), SqlClassChoices(engine)
    reads: tuple[Callable[[], object], ...] = (
        lambda: looks.looks("ada", ["l"]),
        lambda: looks.find_set("ada", "s"),
        lambda: looks.wishes("ada"),
        choices.behind,
        choices.counts,
        choices.counted,
    )
    for read in reads:
        with pytest.raises(NotStored):
            read()


def test_a_folder_that_cannot_hold_a_database_is_told_at_the_start(tmp_path: Path) -> None:
    (tmp_path / "quizroom.sqlite").mkdir()
    with pytest.raises(NotStored):
        open_database(url_in(tmp_path))


def test_an_event_of_another_program_is_unreadable(engine: Engine) -> None:
    log = SqlEventLog(engine)
    log.append([laid_out("a")])
    with engine.begin() as connection:
        connection.execute(text("UPDATE events SET body = x'7b7d'"))
    with pytest.raises(UnreadableEvent):
        log.read("a")


def test_two_programs_over_one_file_cannot_both_write_a_version(open_here: OpenHere) -> None:
    one, other = (SqlEventLog(open_here()) for _ in range(2))
    one.append([laid_out("a")])
    other.append([entry("a", 2)])
    with pytest.raises(VersionTaken):
        one.append([entry("a", 2)])
    assert len(one.read("a")) == len(other.read("a")) == 2


def test_a_commit_is_synchronised_with_the_disk(engine: Engine) -> None:
    # SQLite documentation, "PRAGMA synchronous" (from memory): 2 is FULL; WAL needs it against power cuts
    with engine.connect() as connection:
        assert connection.execute(text("PRAGMA journal_mode")).scalar() == "wal"
        assert connection.execute(text("PRAGMA synchronous")).scalar() == 2
