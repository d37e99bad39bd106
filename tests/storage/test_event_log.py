"""The contract of every event log."""

import pytest

from quizroom.room.events import PlayerRemoved
from quizroom.service.ports import EventLog, VersionTaken
from tests.storage.entries import OFF, ON, entry, laid_out, opened


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

    def test_the_newest_version_of_each_room_is_told(self, log: EventLog) -> None:
        log.append([laid_out("a"), entry("a", 2, ON), entry("a", 3, OFF), laid_out("b"), laid_out("c")])
        assert log.versions(["a", "b", "nowhere"]) == {"a": 3, "b": 1}
        assert log.versions([]) == {}

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
