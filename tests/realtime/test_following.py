"""A worker keeps up with the others: by notices, and without them."""

import pytest

from quizroom.realtime.following import LOOK_EVERY_S, Following, Orphans, forget_rooms_of_others
from quizroom.realtime.seats import Seats
from quizroom.service.ports import NotStored
from quizroom.storage.memory import MemoryEventLog, SilentNotices
from tests.realtime.two_rooms import open_two_rooms
from tests.room.samples import CLOSE, says
from tests.service.fakes import Desk, WatchedLog, seated


def beside(desk: Desk) -> tuple[Desk, Following]:
    other = Desk(desk.log, shared=True)
    other.rooms.room("room-1")
    return other, Following(rooms=other.rooms, log=other.log, notices=SilentNotices("nobody is heard"))


def test_a_notice_brings_what_another_worker_wrote() -> None:
    one = seated()
    other, following = beside(one)
    room = one.rooms.handle("room-1", says("ada", "B"))
    following.hear("room-1", room.version)
    following.run_once()
    assert other.rooms.room("room-1") == room


def test_a_notice_of_what_is_known_or_of_a_room_that_is_not_here_costs_no_reading() -> None:
    log = WatchedLog()
    desk = open_two_rooms(log)
    other, following = beside(desk)
    log.failures_of = dict.fromkeys(("room-1", "room-2"), AssertionError("it was read"))
    following.hear("room-1", desk.rooms.room("room-1").version)
    following.hear("room-2", 99)
    following.run_once()
    assert [room.id for room in other.rooms.live()] == ["room-1"]


def test_what_nobody_gave_notice_of_is_found_by_looking() -> None:
    one = seated()
    other, following = beside(one)
    room = one.rooms.handle("room-1", says("ada", "B"))
    following.run_once()
    assert other.rooms.room("room-1") == room


@pytest.mark.parametrize("was_broken,is_found", [(True, True), (False, False)])
def test_after_a_break_it_looks_at_once_although_there_is_news_of_another_room(
    *, was_broken: bool, is_found: bool
) -> None:
    one = seated()
    other, following = beside(one)
    room = one.rooms.handle("room-1", says("ada", "B"))
    if was_broken:
        following.hear_again()
    following.hear("room-2", 1)
    following.run_once()
    assert (other.rooms.room("room-1") == room) is is_found


def test_a_lost_notice_is_made_up_for_although_another_room_gives_notice_all_the_time() -> None:
    one = open_two_rooms(WatchedLog())
    other, seconds = Desk(one.log, shared=True), [100.0]
    for room in ("room-1", "room-2"):
        other.rooms.room(room)
    following = Following(
        rooms=other.rooms, log=other.log, notices=SilentNotices(), steady=lambda: seconds[0]
    )
    one.rooms.handle("room-2", CLOSE)  # nobody is told
    phases = list[str]()
    for _ in range(3):
        seconds[0] += LOOK_EVERY_S / 2
        following.hear("room-1", one.rooms.handle("room-1", says("ada", "AB"[len(phases) % 2])).version)
        following.wait()
        following.run_once()
        phases.append(other.rooms.room("room-2").phase)
    assert phases == ["answering", "closed", "closed"]


def test_a_room_that_cannot_be_read_or_a_store_that_is_away_is_tried_again() -> None:
    one = open_two_rooms(log := WatchedLog())
    other, following = beside(one)
    other.rooms.room("room-2")
    for room in ("room-1", "room-2"):
        one.rooms.handle(room, CLOSE)
    log.failures_of["room-1"] = NotStored("away")
    following.run_once()
    assert [other.rooms.room(room).phase for room in ("room-1", "room-2")] == ["answering", "closed"]
    log.failures_of.clear()
    following.run_once()
    assert other.rooms.room("room-1").phase == "closed"


class Away(MemoryEventLog):
    """A log that cannot be asked for versions."""

    def versions(self, of: object) -> dict[str, int]:
        raise NotStored("away")


def test_looking_goes_on_after_the_store_was_away() -> None:
    one = seated(Away())
    other, following = beside(one)
    one.rooms.handle("room-1", CLOSE)
    following.run_once()
    assert other.rooms.room("room-1").phase == "answering"


def test_a_room_that_has_lost_its_worker_is_woken_once_it_has_been_quiet_for_a_sweep() -> None:
    one = open_two_rooms(WatchedLog())
    other = Desk(one.log, shared=True)
    orphans = Orphans(rooms=other.rooms, log=other.log)
    orphans.sweep()
    assert other.rooms.live() == ()
    one.rooms.handle("room-2", CLOSE)
    orphans.sweep()
    assert [room.id for room in other.rooms.live()] == ["room-1"]
    orphans.sweep()
    assert {room.id for room in other.rooms.live()} == {"room-1", "room-2"}


def test_a_quiet_room_without_an_open_round_is_let_go_and_not_woken_again() -> None:
    one = open_two_rooms(WatchedLog())
    one.rooms.handle("room-2", CLOSE)
    other = Desk(one.log, shared=True)
    orphans = Orphans(rooms=other.rooms, log=other.log)
    for _ in range(3):
        orphans.sweep()
        forget_rooms_of_others(other.rooms, Seats())
    assert [room.id for room in other.rooms.live()] == ["room-1"]


def test_a_room_with_somebody_on_the_line_is_kept() -> None:
    desk, seats = seated(), Seats()
    desk.rooms.handle("room-1", CLOSE)
    seats.connect("s1", session="", now=0)
    seats.take("s1", role="wall", room="room-1")
    forget_rooms_of_others(desk.rooms, seats)
    assert len(desk.rooms.live()) == 1
    seats.disconnect("s1")
    forget_rooms_of_others(desk.rooms, seats)
    assert desk.rooms.live() == ()
