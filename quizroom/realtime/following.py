"""Keeping up with other workers that write to the same log: by their notices, and by looking by oneself."""

import logging
import threading
import time
from collections.abc import Callable
from dataclasses import dataclass, field

from quizroom.realtime.seats import Seats
from quizroom.room.stations import a_clock_may_run
from quizroom.service.ports import EventLog, Notices
from quizroom.service.rooms import Rooms

LOOK_EVERY_S = 5.0
"""How often a worker compares its rooms with the log although notices arrive: one of them may have been
lost."""
LOOK_ALONE_EVERY_S = 0.5
"""The same while no notices arrive."""
SWEEP_EVERY_S = 10.0
"""A room in which nothing has been written for so long may have lost its worker."""

logger = logging.getLogger(__name__)


class Following:
    """Takes into the live rooms what other workers have committed."""

    def __init__(
        self, *, rooms: Rooms, log: EventLog, notices: Notices, steady: Callable[[], float] = time.monotonic
    ) -> None:
        """Follow by `notices`; truth is in `log`. `steady` gives seconds of a clock that never jumps."""
        self._rooms = rooms
        self._log = log
        self._notices = notices
        self._steady = steady
        self._looked_at = steady()
        self._heard: dict[str, int] = {}
        self._must_look = False
        self._wake = threading.Event()

    def hear(self, room: str, version: int) -> None:
        """Another worker says that a room is at a version; costs the caller nothing more."""
        self._heard[room] = max(version, self._heard.get(room, 0))
        self._wake.set()

    def hear_again(self) -> None:
        """Notices arrive again after a break: what was missed must be looked for."""
        self._must_look = True
        self._wake.set()

    def wait(self) -> None:
        """Sleep until there is news, or until it is time to look."""
        self._wake.wait(max(0.0, self._look_due_in_s()))

    def run_once(self) -> None:
        """Take in what has been heard of; look if nothing was, or if it is time to."""
        # Where other rooms give notice all the time, nobody would ever wait long enough to miss one.
        is_time = not self._wake.is_set() or self._look_due_in_s() <= 0
        must_look, self._must_look = self._must_look or is_time, False
        self._wake.clear()
        if must_look:
            self.look()
        live = {room.id: room.version for room in self._rooms.live()}
        heard, self._heard = self._heard, {}
        for room, version in heard.items():
            if room in live and live[room] < version:
                self._catch_up(room)

    def look(self) -> None:
        """Compare the versions of all live rooms with the log's."""
        self._looked_at = self._steady()
        try:
            for room, version in self._log.versions([room.id for room in self._rooms.live()]).items():
                self._heard[room] = max(version, self._heard.get(room, 0))
        except Exception:  # the store is away for a while
            logger.exception("the log could not be compared; it will be tried again")

    def _look_due_in_s(self) -> float:
        every_s = LOOK_ALONE_EVERY_S if self._notices.fault() else LOOK_EVERY_S
        return self._looked_at + every_s - self._steady()

    def _catch_up(self, room: str) -> None:
        try:
            self._rooms.catch_up(room)
        except Exception:  # the others must go on; this one is found again by the next look
            logger.exception("the room %s could not be read on", room)


@dataclass(slots=True)
class Orphans:
    """Finds unfinished rooms that have gone quiet, as those of a worker that died, and wakes those with an
    open round.

    Whoever wakes a room closes its round in time; several may, since the version decides.
    """

    rooms: Rooms
    log: EventLog
    seen: dict[str, int] = field(default_factory=dict)
    judged: dict[str, int] = field(default_factory=dict)

    def sweep(self) -> None:
        """Look once; raises `NotStored`."""
        live = {room.id for room in self.rooms.live()}
        versions = dict(self.log.versions(self.log.unfinished_rooms()))
        for room, version in versions.items():
            is_quiet = self.seen.get(room) == version
            if is_quiet and room not in live and self.judged.get(room) != version:
                self.rooms.find(room)
                self.judged[room] = version
        self.seen = versions
        self.judged = {room: version for room, version in self.judged.items() if room in versions}


def forget_rooms_of_others(rooms: Rooms, seats: Seats) -> None:
    """Let go of rooms in which nobody is on a line of this worker and nothing is due; their logs stay."""
    watched = seats.rooms()
    for room in rooms.live():
        runs = a_clock_may_run(room) or (room.run is not None and room.phase != "finished")
        if room.id not in watched and not runs:
            rooms.forget(room.id)
