"""One worker among several over the same database: what it does beside serving its own lines."""

import logging
from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from quizroom.realtime.alarms import another_worker_is_alive, give_back_lost_time
from quizroom.realtime.following import SWEEP_EVERY_S, Following, Orphans, forget_rooms_of_others
from quizroom.realtime.seats import Seats
from quizroom.service.ports import Clock, EventLog, Heartbeat, Notices
from quizroom.service.rooms import Rooms

logger = logging.getLogger(__name__)


@dataclass(frozen=True, slots=True, kw_only=True)
class Fellow:
    """What a worker shares with others, and its own lines; `sleep` lets so many seconds pass."""

    rooms: Rooms
    log: EventLog
    seats: Seats
    heartbeat: Heartbeat
    clock: Clock
    notices: Notices
    sleep: Callable[[float], None]


def join_the_others(fellow: Fellow, *, spawn: Callable[..., Any], then: Callable[[bool], None]) -> None:
    """Begin to follow the others; once it is known whether time was lost, `then` watches the clock for
    ever; it is told whether no other worker was there.
    """
    following = Following(rooms=fellow.rooms, log=fellow.log, notices=fellow.notices)
    for loop in fellow.notices.loops(following.hear, following.hear_again):
        spawn(loop)
    spawn(_follow, following)
    spawn(_sweep, fellow)
    spawn(_return_lost_time, fellow, fellow.clock.now(), then)


def _follow(following: Following) -> None:
    while True:
        following.wait()
        following.run_once()


def _sweep(fellow: Fellow) -> None:
    orphans = Orphans(rooms=fellow.rooms, log=fellow.log)
    while True:
        fellow.sleep(SWEEP_EVERY_S)
        try:
            orphans.sweep()
            forget_rooms_of_others(fellow.rooms, fellow.seats)
        except Exception:
            logger.exception("rooms of other workers could not be looked for; it will be tried again")


def _return_lost_time(fellow: Fellow, began: datetime, then: Callable[[bool], None]) -> None:
    alone = False
    try:
        alone = not another_worker_is_alive(fellow.heartbeat, fellow.sleep)
        if alone:
            give_back_lost_time(fellow.rooms, fellow.log, fellow.heartbeat, fellow.clock, beside=began)
    except Exception:
        logger.exception("whether time was lost could not be found out")
    then(alone)
