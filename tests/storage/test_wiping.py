"""Writing the database's files anew, so that what was erased is in none of them."""

from pathlib import Path

import pytest
from sqlalchemy import Engine

from quizroom.storage.database import open_database
from quizroom.storage.event_log import SqlEventLog
from quizroom.storage.kept_reviews import SqlReviews
from quizroom.storage.wiping import SqlWiping
from tests.storage.databases import url_in
from tests.storage.entries import laid_out


@pytest.mark.parametrize("database", ["SQLite", "PostgreSQL"], indirect=True)
def test_every_database_can_be_wiped_and_goes_on(database: Engine) -> None:
    log = SqlEventLog(database)
    log.append([laid_out("a"), laid_out("b")])
    SqlReviews(database).erase_review("a")
    assert SqlWiping(database).wipe()
    assert (log.read("a"), len(log.read("b"))) == ((), 1)
    log.append([laid_out("c")])
    assert set(log.unfinished_rooms()) == {"b", "c"}


def test_while_somebody_else_reads_it_waits_for_nobody_and_says_so(tmp_path: Path) -> None:
    ours, theirs = open_database(url_in(tmp_path)), open_database(url_in(tmp_path))
    SqlEventLog(ours).append([laid_out("a")])
    with theirs.connect() as reader:
        reader.exec_driver_sql("BEGIN")
        reader.exec_driver_sql("SELECT count(*) FROM events").all()
        assert not SqlWiping(ours).wipe()
        reader.rollback()
    assert SqlWiping(ours).wipe()
    ours.dispose()
    theirs.dispose()
