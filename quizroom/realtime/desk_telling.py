"""Telling the desks of a room, in which all players are listed.

With thousands of players the list is by far the largest thing that is said to anybody. So above `AT_EASE`
players it comes less often, after a step by itself, and others may go on while it is put together: neither
players nor answers wait for it.
"""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import Any, Protocol

from quizroom.marking import RoomMarks
from quizroom.protocol.codec import write
from quizroom.realtime.seats import Seats
from quizroom.room.state import Room
from quizroom.service.ports import Clock
from quizroom.views.desk import desk_without_roster, roster_rows, with_roster
from quizroom.views.desk_model import DeskView, RosterRow

AT_EASE = 500
PLAYERS_A_SECOND = 1000
"""How fast, above so many, the pause between two lists grows."""
BREATHE_EVERY = 50
"""After so many players others may go on."""

LONG_AGO = timedelta(days=1)


class Emit(Protocol):
    """Sends one event to a Socket.IO room or connection."""

    def __call__(self, event: str, data: Any, *, to: str) -> None:
        """Send `data`; returns without waiting for anybody."""


@dataclass(slots=True)
class _Desk:
    """When a room's desks were given the list last, and the room of which they still wait for one, if any."""

    told_at: datetime
    waiting: Room | None = None


class DeskTelling:
    """Tells desks, and remembers which of them still wait for a list of players."""

    def __init__(
        self,
        *,
        seats: Seats,
        clock: Clock,
        emit: Emit,
        breathe: Callable[[], object],
        marks: Callable[[Room], RoomMarks],
    ) -> None:
        """Tell the desks in `seats`; `breathe` lets others go on, `marks` gives the marks of a room."""
        self._seats = seats
        self._clock = clock
        self._emit = emit
        self._breathe = breathe
        self._marks = marks
        self._desks: dict[str, _Desk] = {}

    def tell(self, room: Room, *, at_once: bool = False) -> None:
        """Say how the room stands: all of it, or without the list where that has to wait for its turn."""
        if not self._seats.in_room(room.id, "desk"):
            return
        now = self._clock.now()
        desk = self._desks.setdefault(room.id, _Desk(told_at=now - LONG_AGO))
        above = max(0, len(room.players) - AT_EASE)
        is_due = now - desk.told_at >= timedelta(seconds=above / PLAYERS_A_SECOND)
        if is_due and not (at_once and above):
            desk.told_at, desk.waiting = now, None
            self._say(room, self._whole(room, now))
            return
        desk.waiting = room
        if at_once:
            self._say(room, desk_without_roster(room, self._marks(room), now))

    def waiting(self) -> list[Room]:
        """The rooms of which a desk waits for the list."""
        return [desk.waiting for desk in self._desks.values() if desk.waiting is not None]

    def forget(self, room: str) -> None:
        """Nobody is at this room's desk any more."""
        self._desks.pop(room, None)

    def _whole(self, room: Room, now: datetime) -> DeskView:
        marks = self._marks(room)
        rows: list[RosterRow] = []
        for row in roster_rows(room, marks):
            rows.append(row)
            if len(rows) % BREATHE_EVERY == 0:
                self._breathe()
        return with_roster(desk_without_roster(room, marks, now), rows)

    def _say(self, room: Room, view: DeskView) -> None:
        self._emit("desk", write(view), to=desk_of(room.id))


def desk_of(room: str) -> str:
    """Name of the Socket.IO room of a room's desks."""
    return f"desk {room}"
