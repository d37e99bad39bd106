"""Reports follow the log, are for their host alone, and let rooms be served meanwhile."""

import pytest

from quizroom.room.commands import CloseRound, Command, EndReview, OpenDoor, OpenRound, StrikeItem
from quizroom.service import reports
from quizroom.service.reports import Reports
from quizroom.service.rooms import Rooms
from quizroom.storage.database import open_database
from quizroom.storage.event_log import SqlEventLog
from quizroom.storage.memory import MemoryEventLog
from tests.room.sample_items import one_best
from tests.room.samples import preparation, says, seat
from tests.service.fakes import SetClock

PLAYERS = ("ada", "bo", "cem")


@pytest.fixture(params=["memory", "sqlite"])
def log(request: pytest.FixtureRequest) -> MemoryEventLog | SqlEventLog:
    return MemoryEventLog() if request.param == "memory" else SqlEventLog(open_database("sqlite://"))


def served(log: MemoryEventLog | SqlEventLog) -> Rooms:
    return Rooms(log=log, clock=SetClock(), on_change=lambda _: None)


def play(rooms: Rooms, clock: SetClock, room: str = "room-1", host: str = "owner") -> None:
    before: tuple[Command, ...] = (preparation(one_best(), host=host), OpenDoor(door_code=room.upper()))
    after: tuple[Command, ...] = (CloseRound(round=1, by_host=True), EndReview())
    for order in (*before, *map(seat, PLAYERS), OpenRound(round=1)):
        rooms.handle(room, order)
    clock.move(20)
    for order in (*(says(player, "B") for player in PLAYERS), *after):
        rooms.handle(room, order)


@pytest.fixture
def rooms(log: MemoryEventLog | SqlEventLog) -> Rooms:
    clock = SetClock()
    rooms = Rooms(log=log, clock=clock, on_change=lambda _: None)
    for room, host in (("room-1", "owner"), ("room-2", "owner"), ("room-3", "somebody else")):
        play(rooms, clock, room, host)
    return rooms


def test_a_review_is_reported_to_its_host_alone(rooms: Rooms, log: MemoryEventLog | SqlEventLog) -> None:
    found = Reports(rooms=rooms, log=log)
    report = found.review("room-1", host="owner")
    assert report is not None
    assert (report.answered, report.marks.mean) == (3, 1.0)
    assert found.review("room-3", host="owner") is None
    assert found.review("room-1", host="somebody else") is None
    assert found.review("room-1", host="") is None
    assert found.review("no-room", host="owner") is None


def test_a_strike_after_the_end_changes_the_report_and_nothing_else_computes_it_again(
    rooms: Rooms, log: MemoryEventLog | SqlEventLog
) -> None:
    found = Reports(rooms=rooms, log=log)
    first = found.review("room-1", host="owner")
    assert found.review("room-1", host="owner") is first
    rooms.handle("room-1", StrikeItem(round=1))
    struck = found.review("room-1", host="owner")
    assert struck is not None
    assert (struck.struck, struck.sheets) == ((1,), ())


def test_a_room_that_is_not_in_memory_is_read_in_pieces_and_stays_out_of_it(
    rooms: Rooms, log: MemoryEventLog | SqlEventLog, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(reports, "AT_ONCE", 3)
    breaths: list[None] = []
    fresh = served(log)
    found = Reports(rooms=fresh, log=log, breathe=lambda: breaths.append(None))
    report = found.review("room-1", host="owner")
    assert report == Reports(rooms=rooms, log=log).review("room-1", host="owner")
    assert fresh.live() == ()
    assert report is not None
    assert len(breaths) >= report.version // 3


def test_a_course_holds_the_reviews_of_its_list_and_host(
    rooms: Rooms, log: MemoryEventLog | SqlEventLog
) -> None:
    found = Reports(rooms=rooms, log=log)
    course = found.course("hhc_kn_232", host="owner")
    assert course is not None
    assert {one.room for one in course.reviews} == {"room-1", "room-2"}
    assert found.course("another", host="owner") is None
    assert found.course("hhc_kn_232", host="nobody") is None


def test_what_was_erased_or_changed_is_dropped(rooms: Rooms, log: MemoryEventLog | SqlEventLog) -> None:
    found = Reports(rooms=rooms, log=log)
    found.tidy()
    found.course("hhc_kn_232", host="owner")
    found.tidy()
    assert set(found.kept) == {"room-1", "room-2"}
    rooms.handle("room-1", StrikeItem(round=1))
    found.tidy()
    assert set(found.kept) == {"room-2"}


def test_only_so_many_reports_are_kept(
    rooms: Rooms, log: MemoryEventLog | SqlEventLog, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(reports, "MOST_KEPT", 1)
    found = Reports(rooms=rooms, log=log)
    found.course("hhc_kn_232", host="owner")
    assert len(found.kept) == 1
