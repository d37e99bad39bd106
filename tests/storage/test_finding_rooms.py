"""The ways to find a room in any event log."""

from quizroom.service.ports import EventLog
from tests.room.samples import after
from tests.storage.entries import ended, laid_out, opened


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
