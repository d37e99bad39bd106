"""The contract of every event log."""

from datetime import datetime

import pytest

from quizroom.room.events import DoorOpened, Event, PlayerRemoved, ReviewEnded, ReviewPrepared, StandingsSet
from quizroom.service.ports import Entry, EventLog, VersionTaken
from tests.room.samples import NOON, after, one_best, plan

ON, OFF = StandingsSet(on=True), StandingsSet(on=False)


def laid_out(room: str, *, host: str = "owner", at: datetime = NOON) -> Entry:
    event = ReviewPrepared(room=room, host=host, plan=plan(), items=(one_best(),), at=at)
    return Entry(room=room, version=1, event=event)


def entry(room: str, version: int, event: Event = ON) -> Entry:
    return Entry(room=room, version=version, event=event)


def opened(room: str, code: str, version: int = 2) -> Entry:
    return entry(room, version, DoorOpened(door_code=code, at=after(1)))


def ended(room: str, version: int) -> Entry:
    return entry(room, version, ReviewEnded(at=after(2)))


class TestEventLog:
    """What `service.ports.EventLog` promises, whichever store keeps it."""

    def test_an_unknown_room_has_no_events(self, log: EventLog) -> None:
        assert log.read("nowhere") == ()
        assert log.room_of_door("CDFHJ") is None
        assert log.rooms_of_host("owner") == log.unfinished_rooms() == ()

    def test_events_come_back_in_order_and_equal(self, log: EventLog) -> None:
        first = laid_out("a")
        log.append([first, entry("a", 2, ON)])
        log.append([entry("a", 3, OFF), entry("a", 4, PlayerRemoved(player="bo"))])
        assert log.read("a") == (first.event, ON, OFF, PlayerRemoved(player="bo"))

    def test_reading_on_gives_only_what_is_newer(self, log: EventLog) -> None:
        log.append([laid_out("a"), entry("a", 2, ON), entry("a", 3, OFF)])
        assert log.read("a", after=1) == (ON, OFF)
        assert log.read("a", after=3) == log.read("a", after=9) == ()

    def test_appending_nothing_is_nothing(self, log: EventLog) -> None:
        log.append([])
        assert log.unfinished_rooms() == ()

    def test_rooms_are_kept_apart(self, log: EventLog) -> None:
        log.append([laid_out("a"), laid_out("b"), entry("b", 2, OFF)])
        assert len(log.read("a")) == 1
        assert log.read("b", after=1) == (OFF,)

    def test_a_version_that_is_there_is_taken_and_nothing_is_appended(self, log: EventLog) -> None:
        log.append([laid_out("a"), entry("a", 2, ON)])
        with pytest.raises(VersionTaken) as taken:
            log.append([entry("a", 2, OFF), entry("a", 3, OFF)])
        assert taken.value.rooms == ("a",)
        assert log.read("a", after=1) == (ON,)

    def test_a_conflict_in_one_room_keeps_all_rooms_of_the_turn_out(self, log: EventLog) -> None:
        log.append([laid_out("a"), laid_out("b"), entry("b", 2, ON)])
        with pytest.raises(VersionTaken) as taken:
            log.append([opened("a", "CDFHJ"), laid_out("c"), entry("b", 2, OFF)])
        assert "b" in taken.value.rooms
        assert [len(log.read(room)) for room in "abc"] == [1, 2, 0]
        assert log.room_of_door("CDFHJ") is None
        assert set(log.unfinished_rooms()) == {"a", "b"}

    def test_after_a_conflict_the_right_version_can_be_appended(self, log: EventLog) -> None:
        log.append([laid_out("a")])
        with pytest.raises(VersionTaken):
            log.append([laid_out("a")])
        log.append([entry("a", 2, OFF)])
        assert log.read("a", after=1) == (OFF,)


class TestFindingRooms:
    """The ways to find a room without knowing its id."""

    def test_a_door_code_finds_its_room(self, log: EventLog) -> None:
        log.append([laid_out("a"), opened("a", "CDFHJ"), laid_out("b"), opened("b", "KMNPR")])
        assert [log.room_of_door(code) for code in ("CDFHJ", "KMNPR", "cdfhj", "")] == ["a", "b", None, None]

    def test_an_unfinished_room_comes_before_finished_ones_with_the_same_code(self, log: EventLog) -> None:
        log.append([laid_out("old", at=after(1)), opened("old", "CDFHJ")])
        log.append([laid_out("new", at=after(9)), opened("new", "CDFHJ"), ended("new", 3)])
        assert log.room_of_door("CDFHJ") == "old"

    def test_among_finished_rooms_the_newest_has_the_code(self, log: EventLog) -> None:
        for room, at in (("b", 5), ("c", 9), ("a", 1)):
            log.append([laid_out(room, at=after(at)), opened(room, "CDFHJ"), ended(room, 3)])
        assert log.room_of_door("CDFHJ") == "c"

    def test_a_host_finds_the_own_rooms_newest_first(self, log: EventLog) -> None:
        log.append([laid_out("a", at=after(1)), laid_out("b", at=after(5)), laid_out("c", at=after(3))])
        log.append([laid_out("d", host="other", at=after(7)), ended("b", 2)])
        assert log.rooms_of_host("owner") == ("b", "c", "a")
        assert log.rooms_of_host("other") == ("d",)

    def test_rooms_that_have_not_ended_are_listed_oldest_first(self, log: EventLog) -> None:
        log.append([laid_out("a", at=after(5)), laid_out("b", at=after(1)), laid_out("c"), ended("c", 2)])
        assert log.unfinished_rooms() == ("b", "a")
