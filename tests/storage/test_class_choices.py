"""The contract of the counts of classes."""

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

import pytest

from quizroom.questions.experience import AskCount
from quizroom.room.events import ReviewEnded
from quizroom.service.class_ports import ClassChoices
from quizroom.service.ports import Entry, NotStored
from quizroom.storage.class_choices import SqlClassChoices
from quizroom.storage.class_memory import MemoryClassChoices
from quizroom.storage.event_log import SqlEventLog
from tests.room.samples import NOON
from tests.storage.conftest import STORES
from tests.storage.databases import OpenHere, read_only
from tests.storage.entries import laid_out


@dataclass(frozen=True, slots=True)
class Shelf:
    """A store of counts, and a way to have a finished review with a log of so many events."""

    choices: ClassChoices
    finish: Callable[[str, int], None]


def count(ask: str, *, typed: bool = False, answered: int = 10, right: int = 4, **wrong: int) -> AskCount:
    return AskCount(ask=ask, typed=typed, answered=answered, right=right, wrong=wrong)


@pytest.fixture(params=STORES)
def shelf(request: pytest.FixtureRequest, open_here: OpenHere) -> Shelf:
    """An empty store of each kind."""
    if request.param == "memory":
        finished: dict[str, int] = {}
        return Shelf(MemoryClassChoices(lambda: finished), finished.__setitem__)
    log = SqlEventLog(open_here())

    def finish(room: str, version: int) -> None:
        known = len(log.read(room))
        if not known:
            log.append([laid_out(room)])
        ended = ReviewEnded(at=NOON)
        log.append([Entry(room=room, version=n, event=ended) for n in range(max(known, 1) + 1, version + 1)])

    return Shelf(SqlClassChoices(open_here()), finish)


class TestClassChoices:
    """What `service.class_ports.ClassChoices` promises."""

    def test_counts_are_summed_over_the_reviews_of_a_course_and_over_all(self, shelf: Shelf) -> None:
        for room, course in (("r1", "one"), ("r2", "one"), ("r3", "other")):
            shelf.finish(room, 2)
            shelf.choices.replace(
                room, course=course, version=2, counts=[count("b", x=2), count("a"), count("b", typed=True)]
            )
        assert shelf.choices.counts("one") == (
            count("a", answered=20, right=8),
            count("b", answered=20, right=8, x=4),
            count("b", typed=True, answered=20, right=8),
        )
        assert shelf.choices.counts()[1] == count("b", answered=30, right=12, x=6)
        assert shelf.choices.counts("no such course") == ()

    def test_counting_a_review_anew_replaces_what_was_counted(self, shelf: Shelf) -> None:
        shelf.finish("r1", 3)
        shelf.choices.replace("r1", course="one", version=2, counts=[count("a", x=3), count("b")])
        shelf.choices.replace("r1", course="one", version=3, counts=[count("a", y=1)])
        assert shelf.choices.counts() == (count("a", y=1),)

    def test_older_counts_never_replace_newer_ones(self, shelf: Shelf) -> None:
        shelf.finish("r1", 3)
        shelf.choices.replace("r1", course="one", version=3, counts=[])
        shelf.choices.replace("r1", course="one", version=2, counts=[count("a")])
        assert shelf.choices.counts() == ()

    def test_a_forgotten_review_counts_no_more(self, shelf: Shelf) -> None:
        shelf.finish("r1", 2)
        shelf.choices.replace("r1", course="one", version=2, counts=[count("a", x=1)])
        shelf.choices.forget("r1")
        shelf.choices.forget("r1")
        assert shelf.choices.counts() == ()
        assert shelf.choices.behind() == ("r1",)

    def test_which_reviews_are_counted_changes_with_every_change_of_counts(self, shelf: Shelf) -> None:
        assert shelf.choices.counted() == ()
        for room in ("r2", "r1"):
            shelf.finish(room, 3)
            shelf.choices.replace(room, course="one", version=2, counts=[count("a")])
        assert shelf.choices.counted() == (("r1", 2), ("r2", 2))
        shelf.choices.replace("r1", course="one", version=3, counts=[count("b")])
        shelf.choices.forget("r2")
        shelf.choices.replace("erased", course="one", version=2, counts=[count("a")])
        assert shelf.choices.counted() == (("r1", 3),)

    def test_a_review_whose_log_is_gone_counts_no_more(self, shelf: Shelf) -> None:
        shelf.choices.replace("erased", course="one", version=2, counts=[count("a", x=1)])
        assert shelf.choices.counts() == ()

    def test_finished_reviews_that_were_not_counted_to_their_end_are_behind(self, shelf: Shelf) -> None:
        for room in ("r1", "r2", "r3"):
            shelf.finish(room, 2)
        shelf.choices.replace("r1", course="one", version=2, counts=[])
        shelf.choices.replace("r2", course="one", version=2, counts=[])
        shelf.finish("r2", 4)
        assert sorted(shelf.choices.behind()) == ["r2", "r3"]


def test_a_store_that_cannot_write_says_so(tmp_path: Path) -> None:
    with pytest.raises(NotStored):
        SqlClassChoices(read_only(tmp_path)).replace("r1", course="one", version=1, counts=[count("a")])
