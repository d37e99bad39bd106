"""Telling the desks of a room, in which all players are listed.

With thousands of players the list is by far the largest thing that is said to anybody. So above `AT_EASE`
players it comes less often, after a step by itself, and others may go on while it is put together: neither
players nor answers wait for it.
"""

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from datetime import datetime, timedelta
from itertools import islice
from typing import Any, Protocol

from quizroom.marking import RoomMarks
from quizroom.protocol.codec import write, write_rows
from quizroom.realtime.seats import Seats
from quizroom.room.state import Room
from quizroom.service.ports import Clock
from quizroom.views.desk import desk_without_roster, roster_rows
from quizroom.views.desk_model import RosterRow

AT_EASE = 500
PLAYERS_A_SECOND = 1000
"""How fast, above so many, the pause between two lists grows."""
BREATHE_EVERY = 20
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
            # Right after a step a class answers, all at once: the list waits for that.
            desk.told_at = now
            self._say(room, write(desk_without_roster(room, self._marks(room), now)))

    def waiting(self) -> list[Room]:
        """The rooms of which a desk waits for the list."""
        return [desk.waiting for desk in self._desks.values() if desk.waiting is not None]

    def forget(self, room: str) -> None:
        """Nobody is at this room's desk any more."""
        self._desks.pop(room, None)

    def _whole(self, room: Room, now: datetime) -> dict[str, Any]:
        marks = self._marks(room)
        players: list[Any] = []
        for rows in batched(roster_rows(room, marks), BREATHE_EVERY):
            players += write_rows(rows)
            self._breathe()
        view: dict[str, Any] = write(desk_without_roster(room, marks, now))
        return {**view, "roster": players, "roster_later": False}

    def _say(self, room: Room, view: dict[str, Any]) -> None:
        self._emit("desk", view, to=desk_of(room.id))


def batched(rows: Iterable[RosterRow], size: int) -> Iterator[tuple[RosterRow, ...]]:
    """The rows in their order, so many at a time."""
    left = iter(rows)
    while some := tuple(islice(left, size)):
        yield some


def desk_of(room: str) -> str:
    """Name of the Socket.IO room of a room's desks."""
    return f"desk {room}"
