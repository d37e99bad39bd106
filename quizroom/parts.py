"""Everything that lives as long as the server's process."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from flask import Flask

from quizroom.knowledge.catalogue import Catalogue
from quizroom.pages.host_entry import HostEntry
from quizroom.realtime.broadcast import Broadcast
from quizroom.realtime.leaving import Leaving
from quizroom.realtime.seats import Seats
from quizroom.service.class_work import ClassWork
from quizroom.service.forgetting import Forgetting
from quizroom.service.hosts import Hosts
from quizroom.service.own_items import OwnItems
from quizroom.service.pictures import Pictures
from quizroom.service.ports import EventLog, Notices
from quizroom.service.reports import Reports
from quizroom.service.review_list import ReviewList
from quizroom.service.rooms import Rooms
from quizroom.service.rosters import Rosters
from quizroom.service.tries import Tries
from quizroom.settings import Settings
from quizroom.storage.accounts import SqlHeartbeat
from quizroom.storage.players import SqlPlayers
from quizroom.storage.system_clock import SystemClock

if TYPE_CHECKING:
    from quizroom.realtime.meters import Meters


@dataclass(frozen=True, slots=True, kw_only=True)
class Parts:
    """The parts of a running server, put together by `app`."""

    settings: Settings
    catalogue: Catalogue
    rooms: Rooms
    log: EventLog
    library: OwnItems
    pictures: Pictures
    clock: SystemClock
    seats: Seats
    sockets: Any
    heartbeat: SqlHeartbeat
    class_work: ClassWork
    broadcast: Broadcast
    hosts: Hosts
    review_list: ReviewList
    entry: HostEntry
    web: Flask
    meters: "Meters | None"
    leaving: Leaving
    store_fault: Callable[[], str]
    notices: Notices
    players: SqlPlayers
    forgetting: Forgetting
    rosters: Rosters
    reports: Reports
    tries: Tries
