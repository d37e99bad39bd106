"""Rounds are closed when their time is over, and an outage costs nobody time."""

from datetime import datetime

import pytest

from quizroom.realtime.alarms import (
    RECONNECT_MS,
    Pulse,
    any_round_is_open,
    close_rounds_that_are_over,
    forget_finished_rooms,
    give_back_lost_time,
)
from quizroom.realtime.seats import Seats
from quizroom.room.commands import CloseRound, EndReview, HoldResults, PauseRound, ShowResult
from quizroom.room.events import RoundClosed
from quizroom.room.talk_commands import LetTalk
from quizroom.service.ports import NotStored
from quizroom.storage.memory import MemoryHeartbeat
from tests.realtime.two_rooms import open_two_rooms
from tests.room.samples import after
from tests.service.fakes import SetClock, WatchedLog, seated

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


def test_a_store_that_is_away_is_told_in_one_line_however_many_rounds_are_over(
    caplog: pytest.LogCaptureFixture,
) -> None:
    desk = open_two_rooms(log := WatchedLog())
    desk.clock.move(60)
    log.failure = NotStored("disk full\n(with an address that explains it)")
    close_rounds_that_are_over(desk.rooms, desk.clock)
    assert caplog.messages == ["rounds could not be closed: disk full; it will be tried again"]
    assert caplog.records[0].exc_info is None


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
        is_full = True

        def beat(self, now: datetime) -> None:
            if self.is_full:
                raise NotStored("disk full")
            super().beat(now)

    heartbeat, clock = Failing(), SetClock()
    pulse = Pulse(heartbeat, clock)
    pulse.beat_if_due()
    assert heartbeat.last_beat() is None
    heartbeat.is_full = False
    clock.move(1)
    pulse.beat_if_due()
    assert heartbeat.last_beat() == after(1)


def test_a_finished_room_is_let_go_once_nobody_looks_and_comes_back_from_its_log() -> None:
    desk, seats = seated(), Seats()
    seats.connect("s1", session="", now=0)
    seats.take("s1", role="wall", room="room-1")
    forget_finished_rooms(desk.rooms, seats)
    desk.rooms.handle("room-1", EndReview())
    forget_finished_rooms(desk.rooms, seats)
    assert len(desk.rooms.live()) == 1
    seats.disconnect("s1")
    forget_finished_rooms(desk.rooms, seats)
    assert desk.rooms.live() == ()
    assert desk.rooms.room("room-1").phase == "finished"


def test_a_talk_and_the_second_answering_end_by_themselves_and_the_heart_beats_for_them() -> None:
    desk = seated()
    for order in (HoldResults(on=True), CloseRound(round=1, by_host=True), LetTalk(round=1)):
        desk.rooms.handle("room-1", order)
    for seconds, phase in (
        (120.7, "talking"),
        (0.1, "answering again"),
        (30, "answering again"),
        (1, "closed"),
    ):
        assert any_round_is_open(desk.rooms)
        desk.clock.move(seconds)
        close_rounds_that_are_over(desk.rooms, desk.clock)
        assert desk.rooms.room("room-1").phase == phase
    assert any_round_is_open(desk.rooms)  # the result is held: players may still take more time
    desk.rooms.handle("room-1", ShowResult(round=1))
    assert not any_round_is_open(desk.rooms)


def test_an_outage_lengthens_the_talk_by_what_was_lost_of_it() -> None:
    desk, heartbeat = seated(), MemoryHeartbeat()
    for order in (HoldResults(on=True), CloseRound(round=1, by_host=True)):
        desk.rooms.handle("room-1", order)
    desk.clock.move(10)
    desk.rooms.handle("room-1", LetTalk(round=1))
    desk.clock.move(5)
    heartbeat.beat(desk.clock.now())
    desk.clock.move(20)
    give_back_lost_time(desk.rooms, desk.log, heartbeat, desk.clock)
    assert desk.rooms.room("room-1").rounds[0].closes_at == after(10 + 120 + 20 + RECONNECT_MS / 1000)
