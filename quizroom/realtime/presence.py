"""Who of a study group is on the line: a player whose last line has gone is not waited for."""

import logging
from collections.abc import Callable

from quizroom.realtime.seats import Seats
from quizroom.room.group_commands import GroupCommand, LeaveSeat, ReturnToSeat
from quizroom.room.refusals import Refused
from quizroom.room.state import Room
from quizroom.service.rooms import Rooms

AWAY_AFTER_S = 6.0
"""A reload takes a second or two, and a browser tries again after 3 s at the latest."""

logger = logging.getLogger(__name__)


class Presence:
    """Tells the rooms who has left and who is back.

    It judges only those who have sat at a line of this process, or had been left in their seats when
    it started: whom another process serves is not its business.
    """

    def __init__(self, rooms: Rooms, seats: Seats, steady: Callable[[], float]) -> None:
        """Watch `rooms` by the lines in `seats`; `steady` counts seconds."""
        self._rooms = rooms
        self._seats = seats
        self._steady = steady
        self._seen_at: dict[tuple[str, str], float] = {}

    def expect_everybody(self) -> None:
        """After a start: whoever was there when the server went is looked for from now on."""
        now = self._steady()
        for room in self._rooms.live():
            if room.run is not None:
                self._seen_at |= {(room.id, player): now for player in room.players}

    def look(self) -> None:
        """Compare the lines with what the rooms know."""
        live = {room.id: room for room in self._rooms.live() if _is_watched(room)}
        self._seen_at = {seen: at for seen, at in self._seen_at.items() if seen[0] in live}
        if not live:
            return
        on_line = self._seats.players_in(live)
        for room in live.values():
            self._look_at(room, on_line[room.id] & room.players.keys(), self._steady())

    def _look_at(self, room: Room, on_line: set[str], now: float) -> None:
        away = frozenset[str]() if room.run is None else room.run.away
        self._seen_at |= {(room.id, player): now for player in on_line}
        for player in on_line & away:
            self._tell(room, ReturnToSeat(player=player))
        for player in room.players.keys() - on_line - away:
            # One who has never been seen here sits at another process.
            gone_since = self._seen_at.get((room.id, player), now)
            if now - gone_since >= AWAY_AFTER_S and self._tell(room, LeaveSeat(player=player)):
                # Said once: whoever comes back by another process is that one's business.
                self._seen_at.pop((room.id, player), None)

    def _tell(self, room: Room, command: GroupCommand) -> bool:
        try:
            self._rooms.handle(room.id, command)
        except Refused:
            return True  # sent out meanwhile
        except Exception:  # the others must still be looked after, and this one again in a moment
            logger.exception("a room could not be told who has left; it will be tried again")
            return False
        return True


def _is_watched(room: Room) -> bool:
    return room.run is not None and room.phase != "finished"
