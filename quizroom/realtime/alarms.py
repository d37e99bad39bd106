"""Waking up: closing rounds whose time is over, and noting that the server is alive."""

import logging
from collections.abc import Callable
from datetime import datetime, timedelta

from quizroom.realtime.seats import Seats
from quizroom.room.clock import began_at, is_over, milliseconds_between
from quizroom.room.commands import GiveBackTime
from quizroom.room.group import due_step
from quizroom.room.group_commands import MoveOn
from quizroom.room.own_time import may_have_own_time
from quizroom.room.refusals import Refused
from quizroom.room.state import TIMED, Room
from quizroom.room.station_commands import RingBell
from quizroom.room.stations import a_clock_may_run, are_open, is_due
from quizroom.room.talk import order_when_over
from quizroom.service.ports import Clock, EventLog, Heartbeat, NotStored
from quizroom.service.review_list import ReviewList
from quizroom.service.rooms import Rooms

ALARM_EVERY_S = 0.1
FORGET_EVERY_S = 60.0
BEAT_EVERY = timedelta(seconds=1)
RECONNECT_MS = 3_000
"""Given back on top of an outage: browsers try again after 3 s at the latest (`web/src/line/line.ts`)."""

WATCH_S = 2.5
"""How long a worker that starts listens for the heart of another: two beats, and one that came late."""

logger = logging.getLogger(__name__)


def close_rounds_that_are_over(rooms: Rooms, clock: Clock) -> None:
    """Close every open round of a host, and end every talk, whose deadline and grace have passed."""
    now = clock.now()
    for room in rooms.live():
        order = order_when_over(room) if room.run is None else None
        if order is not None and is_over(room.rounds[-1], now):
            try:
                rooms.handle(room.id, order)
            except Refused:
                continue  # the host was faster, or has just given more time
            except NotStored as failure:
                _tell("rounds could not be closed", failure)
                break  # nor could those of other rooms
            except Exception:  # whatever it is, the other rounds must still be closed, now and later
                logger.exception("a round could not be closed; it will be tried again")


def ring_bells(rooms: Rooms, clock: Clock) -> None:
    """Ring wherever the time of a turn at stations is over."""
    for room in rooms.live():
        if room.stations is not None and is_due(room, clock.now()):
            try:
                rooms.handle(room.id, RingBell(turn=room.stations.turn, by_host=False))
            except Refused:
                continue  # the host was faster, or has just given more time
            except NotStored as failure:
                _tell("bells could not be rung", failure)
                break
            except Exception:  # as above
                logger.exception("a bell could not be rung; it will be tried again")


def move_groups_on(rooms: Rooms, clock: Clock) -> None:
    """Take the step that is due in each review without a host."""
    for room in rooms.live():
        step = due_step(room, clock.now())
        if step is not None:
            try:
                rooms.handle(room.id, MoveOn(step=step, round=len(room.rounds)))
            except NotStored as failure:
                _tell("groups could not be moved on", failure)
                break
            except Exception:  # as above
                logger.exception("a group could not be moved on; it will be tried again")


def open_doors_that_are_due(review_list: ReviewList) -> None:
    """Open the doors that are to open by themselves and whose time has come."""
    try:
        review_list.open_doors_that_are_due()
    except NotStored as failure:
        _tell("doors that were due could not be opened", failure)
    except Exception:  # as above
        logger.exception("a door that was due could not be opened; it will be tried again")


def _tell(what: str, failure: NotStored) -> None:
    """Log that the store fails in one line: it may do so for long, and is tried ten times a second."""
    logger.warning("%s: %s; it will be tried again", what, failure.first_line)


def any_round_is_open(rooms: Rooms) -> bool:
    """Whether an outage from now on would cost players time: also one whose own time runs on."""
    return any(a_clock_may_run(room) or may_have_own_time(room) for room in rooms.live())


def forget_finished_rooms(rooms: Rooms, seats: Seats) -> None:
    """Let go of finished reviews that nobody looks at any more; their logs stay."""
    watched = seats.rooms()
    for room in rooms.live():
        if room.phase == "finished" and room.id not in watched:
            rooms.forget(room.id)


class Pulse:
    """Notes the time once a second, so that an outage can be measured."""

    def __init__(self, heartbeat: Heartbeat, clock: Clock) -> None:
        """Beat into `heartbeat`."""
        self._heartbeat = heartbeat
        self._clock = clock
        self._last: datetime | None = None

    def beat_if_due(self) -> None:
        """Note the time if a second has passed; a store that fails is logged, not fatal."""
        now = self._clock.now()
        if self._last is not None and now - self._last < BEAT_EVERY:
            return
        self._last = now
        try:
            self._heartbeat.beat(now)
        except NotStored as failure:
            _tell("the heartbeat could not be stored", failure)


def give_back_lost_time(
    rooms: Rooms, log: EventLog, heartbeat: Heartbeat, clock: Clock, *, beside: datetime | None = None
) -> None:
    """After a start: wake the unfinished rooms and lengthen open rounds by the outage.

    Then the heart beats at once, lest another outage give back the same time again. A worker beside
    others says when it began: rounds opened since then have lost nothing, and the outage has a name, so that
    of workers that come back together only one returns its time.
    """
    last = heartbeat.last_beat()
    order = "" if beside is None else f"outage {last}"
    for room in log.unfinished_rooms():
        try:
            _give_back(rooms, room, last, beside or clock.now(), order=order)
        except Exception:  # one spoilt room must not keep all others waiting
            logger.exception("the room %s could not be woken", room)
    heartbeat.beat(clock.now())


def another_worker_is_alive(heartbeat: Heartbeat, wait: Callable[[float], None]) -> bool:
    """Whether somebody else's heart beats within `WATCH_S`; `wait` lets so many seconds pass."""
    before = heartbeat.last_beat()
    wait(WATCH_S)
    return heartbeat.last_beat() != before


def _give_back(rooms: Rooms, room_id: str, last: datetime | None, until: datetime, *, order: str) -> None:
    room = rooms.room(room_id)
    began = _began(room)
    if began is not None and (not order or began < until):
        since = began if last is None else max(last, began)
        lost_ms = milliseconds_between(since, until) + RECONNECT_MS
        rooms.handle(room_id, GiveBackTime(ms=lost_ms, order=order))


def _began(room: Room) -> datetime | None:
    """When the clock that now runs for players began; None if none does."""
    if room.stations is not None and are_open(room):
        return room.stations.turn_at
    runs = room.phase in TIMED or may_have_own_time(room)
    return began_at(room.rounds[-1]) if runs else None
