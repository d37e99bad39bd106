"""An outage costs nobody time, and one spoilt room keeps no other asleep."""

import pytest

from quizroom.realtime.alarms import (
    RECONNECT_MS,
    another_worker_is_alive,
    any_round_is_open,
    give_back_lost_time,
)
from quizroom.room.commands import CloseRound, HoldResults, PauseRound
from quizroom.room.own_time import own_clock, told_version
from quizroom.room.time_commands import SetTimeFactor
from quizroom.storage.event_codec import UnreadableEvent
from quizroom.storage.memory import MemoryHeartbeat
from tests.realtime.two_rooms import open_two_rooms
from tests.room.samples import after
from tests.service.fakes import Desk, WatchedLog, seated

PAUSE = PauseRound(round=1)


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


def test_of_two_workers_that_come_back_together_one_returns_the_time() -> None:
    desk, heartbeat = seated(), MemoryHeartbeat()
    desk.clock.move(10)
    heartbeat.beat(desk.clock.now())
    desk.clock.move(100)
    for _ in range(2):
        worker = Desk(desk.log, shared=True)
        worker.clock = desk.clock
        late = MemoryHeartbeat()  # as read before the other worker's heart beat
        late.beat(after(10))
        give_back_lost_time(worker.rooms, worker.log, late, worker.clock, beside=worker.clock.now())
    current = Desk(desk.log).rooms.room("room-1").rounds[0]
    assert current.closes_at == after(30 + 100 + RECONNECT_MS / 1000)


def test_a_round_opened_after_this_worker_began_has_lost_nothing() -> None:
    desk = seated()
    worker = Desk(desk.log, shared=True)
    worker.clock.move(3)
    give_back_lost_time(worker.rooms, worker.log, MemoryHeartbeat(), worker.clock, beside=after(0))
    assert worker.rooms.room("room-1").rounds[0].closes_at == after(30)


def test_after_an_outage_a_player_whose_own_time_ran_has_it_back_once_and_nobody_else_hears() -> None:
    desk, heartbeat = seated(), MemoryHeartbeat()
    for order in (
        HoldResults(on=True),
        SetTimeFactor(player="ada", factor_percent=200),
        CloseRound(round=1, by_host=True),
    ):
        desk.rooms.handle("room-1", order)
    assert any_round_is_open(desk.rooms)  # so that the heart beats, and the outage is measured
    before = told_version(desk.rooms.room("room-1"))
    desk.clock.move(50)
    heartbeat.beat(desk.clock.now())
    desk.clock.move(100)
    for _ in range(2):
        worker = Desk(desk.log, shared=True)
        worker.clock = desk.clock
        late = MemoryHeartbeat()
        late.beat(after(50))
        give_back_lost_time(worker.rooms, worker.log, late, worker.clock, beside=worker.clock.now())
    room = Desk(desk.log).rooms.room("room-1")
    clock = own_clock(room, "ada")
    assert clock is not None
    assert clock.closes_at == after(60 + 100 + RECONNECT_MS / 1000)
    assert told_version(room) == before


def test_another_worker_is_known_by_its_heart() -> None:
    heartbeat = MemoryHeartbeat()
    heartbeat.beat(after(10))
    assert not another_worker_is_alive(heartbeat, lambda _: None)
    assert another_worker_is_alive(heartbeat, lambda seconds: heartbeat.beat(after(10 + seconds)))


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
