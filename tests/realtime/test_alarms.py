"""Rounds are closed when their time is over, and an outage costs nobody time."""

import pytest

from quizroom.realtime.alarms import (
    RECONNECT_MS,
    Pulse,
    any_round_is_open,
    close_rounds_that_are_over,
    give_back_lost_time,
)
from quizroom.room.commands import CloseRound, OpenDoor, OpenRound, PauseRound
from quizroom.room.events import RoundClosed
from quizroom.service.ports import NotStored
from quizroom.storage.event_codec import UnreadableEvent
from quizroom.storage.memory import MemoryHeartbeat
from tests.room.samples import after, preparation
from tests.service.fakes import Desk, SetClock, WatchedLog, seated

PAUSE = PauseRound(round=1)


def test_a_round_is_closed_when_its_deadline_and_the_grace_have_passed() -> None:
    desk = seated()
    for seconds, phase in ((30, "answering"), (0.749, "answering"), (0.001, "closed"), (60, "closed")):
        desk.clock.move(seconds)
        close_rounds_that_are_over(desk.rooms, desk.clock)
        assert desk.rooms.room("room-1").phase == phase
    causes = [event.cause for event in desk.logged() if isinstance(event, RoundClosed)]
    assert causes == ["time"]


def test_a_standing_clock_never_runs_out() -> None:
    desk = seated()
    desk.rooms.handle("room-1", PAUSE)
    desk.clock.move(9999)
    close_rounds_that_are_over(desk.rooms, desk.clock)
    assert desk.rooms.room("room-1").phase == "answering"


def open_two_rooms(log: WatchedLog) -> Desk:
    desk = seated(log)
    for order in (preparation(), OpenDoor(door_code="KMNPR"), OpenRound(round=1)):
        desk.rooms.handle("room-2", order)
    return desk


def test_all_rounds_that_are_over_are_closed_even_if_one_cannot_be() -> None:
    desk = open_two_rooms(log := WatchedLog())
    desk.clock.move(60)
    log.failures_of["room-1"] = RuntimeError("a bug")
    close_rounds_that_are_over(desk.rooms, desk.clock)
    assert [desk.rooms.room(room).phase for room in ("room-1", "room-2")] == ["answering", "closed"]
    log.failures_of.clear()
    close_rounds_that_are_over(desk.rooms, desk.clock)
    assert desk.rooms.room("room-1").phase == "closed"


def test_a_store_that_fails_for_a_while_only_delays_closing() -> None:
    desk = seated(log := WatchedLog())
    desk.clock.move(60)
    log.failure = NotStored("disk full")
    close_rounds_that_are_over(desk.rooms, desk.clock)
    log.failure = None
    close_rounds_that_are_over(desk.rooms, desk.clock)
    assert desk.rooms.room("room-1").phase == "closed"


def test_the_heart_beats_only_for_open_rounds() -> None:
    desk = seated()
    assert any_round_is_open(desk.rooms)
    desk.rooms.handle("room-1", CloseRound(round=1, by_host=True))
    assert not any_round_is_open(desk.rooms)


def test_the_heart_beats_once_a_second() -> None:
    heartbeat, clock = MemoryHeartbeat(), SetClock()
    pulse = Pulse(heartbeat, clock)
    seen = []
    for seconds in (0, 0.5, 0.5, 0.9, 0.2):
        clock.move(seconds)
        pulse.beat_if_due()
        seen.append(heartbeat.last_beat())
    assert seen == [after(0), after(0), after(1), after(1), after(2.1)]


def test_a_beat_that_cannot_be_stored_is_tried_again_later() -> None:
    class Failing(MemoryHeartbeat):
        def beat(self, now: object) -> None:
            raise NotStored("disk full")

    Pulse(Failing(), SetClock()).beat_if_due()


def restarted(desk: Desk, heartbeat: MemoryHeartbeat, *, outage: float) -> Desk:
    """A new process over the same log, so many seconds after the old one died."""
    again = Desk(desk.log)
    again.clock = desk.clock
    again.clock.move(outage)
    give_back_lost_time(again.rooms, again.log, heartbeat, again.clock)
    return again


def test_after_an_outage_an_open_round_gets_its_time_back_and_a_moment_to_reconnect() -> None:
    desk, heartbeat = seated(), MemoryHeartbeat()
    desk.clock.move(10)
    heartbeat.beat(desk.clock.now())
    current = restarted(desk, heartbeat, outage=100).rooms.room("room-1").rounds[0]
    assert current.closes_at == after(30 + 100 + RECONNECT_MS / 1000)
    assert current.limit_ms == 30_000


def test_a_second_outage_gives_back_only_its_own_time() -> None:
    desk, heartbeat = seated(), MemoryHeartbeat()
    desk.clock.move(10)
    heartbeat.beat(desk.clock.now())
    again = restarted(restarted(desk, heartbeat, outage=100), heartbeat, outage=5)
    assert again.rooms.room("room-1").rounds[0].closes_at == after(30 + 105 + 2 * RECONNECT_MS / 1000)


@pytest.mark.parametrize("last_beat", [None, -600.0])
def test_time_is_given_back_from_the_opening_if_no_beat_came_after_it(last_beat: float | None) -> None:
    desk, heartbeat = seated(), MemoryHeartbeat()
    if last_beat is not None:
        heartbeat.beat(after(last_beat))
    current = restarted(desk, heartbeat, outage=50).rooms.room("room-1").rounds[0]
    assert current.closes_at == after(30 + 50 + RECONNECT_MS / 1000)


def test_a_paused_or_closed_round_gets_nothing() -> None:
    desk, heartbeat = seated(), MemoryHeartbeat()
    desk.rooms.handle("room-1", PAUSE)
    before = desk.rooms.room("room-1")
    assert restarted(desk, heartbeat, outage=50).rooms.room("room-1") == before
    desk.rooms.handle("room-1", CloseRound(round=1, by_host=True))
    closed = desk.rooms.room("room-1")
    assert restarted(desk, heartbeat, outage=50).rooms.room("room-1") == closed


def test_after_a_start_every_unfinished_room_is_awake() -> None:
    desk = open_two_rooms(WatchedLog())
    again = restarted(desk, MemoryHeartbeat(), outage=1)
    assert {room.id for room in again.rooms.live()} == {"room-1", "room-2"}


def test_a_room_that_cannot_be_read_does_not_keep_the_others_asleep() -> None:
    desk = open_two_rooms(log := WatchedLog())
    log.failures_of["room-1"] = UnreadableEvent("spoilt")
    again = restarted(desk, MemoryHeartbeat(), outage=1)
    assert {room.id for room in again.rooms.live()} == {"room-2"}
