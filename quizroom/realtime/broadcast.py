"""Telling everybody in a room what has changed.

A change of phase sends views at once. Answers and arrivals only change counts: those are told at
most twice a second, because a message per answer would slow down every acknowledgement.
"""

import logging
import threading
from collections.abc import Callable, Container, Iterable
from dataclasses import dataclass, field
from typing import Any

from quizroom.marking import RoomMarks, marks_of_room
from quizroom.protocol.codec import write
from quizroom.protocol.replies import Tally
from quizroom.realtime.desk_telling import BREATHE_EVERY, DeskTelling, Emit
from quizroom.realtime.seats import Seats
from quizroom.room.bench_events import BenchAnswered, BenchesDrawn, BenchRenamed, BenchTaken
from quizroom.room.change_events import FlagsSettled, FlagTakenBack, ItemFlagged, ItemRekeyed, KeyRestored
from quizroom.room.credit_events import ClaimMissed, EntryAssigned, EntryClaimed, RosterSet
from quizroom.room.events import (
    AnswerAccepted,
    Event,
    HoldingSet,
    ItemRestored,
    ItemStruck,
    PlayerRemoved,
    PlayerRenamed,
    RecordShown,
    ResultShown,
    ReviewEnded,
    RoundClosed,
    RoundOpened,
    RoundPaused,
    RoundResumed,
    SeatEntered,
    StandingsSet,
    TimeAdded,
    WordsRuled,
)
from quizroom.room.own_time import has_more_time, hides_counts, is_untold, told_version
from quizroom.room.owner_events import PlayerForgotten, SeatLinked
from quizroom.room.state import Room
from quizroom.room.station_events import BellRung, StationAnswered, StationShown, StationsOpened
from quizroom.room.talk_events import AgainClosed, AgainOpened, TalkOpened
from quizroom.room.time_events import AlwaysTimeSet, OwnTimeReturned, TimeFactorSet, TimeLinkMade, TimeTaken
from quizroom.service.ports import Clock
from quizroom.service.rooms import Change
from quizroom.views.own import own_view
from quizroom.views.public import answered, public_view
from quizroom.views.telling import round_as_told

TALLY_EVERY_S = 0.5
REMIND_EVERY_S = 5.0

AT_BENCHES = (BenchAnswered, BenchesDrawn, BenchRenamed, BenchTaken)
ABOUT_CLAIMS = (ClaimMissed, EntryAssigned, EntryClaimed)
FLAGS = (ItemFlagged, FlagTakenBack, FlagsSettled)
"""For the desk alone; whoever put a flag up has it in the reply."""
MORE_TIME = (TimeFactorSet, TimeTaken, AlwaysTimeSet)
"""For one player and the desk."""
OWN_TIME = (OwnTimeReturned, TimeLinkMade, *MORE_TIME)
CLOCKS = (
    *(RoundOpened, RoundPaused, RoundResumed, TimeAdded, OwnTimeReturned),
    *(HoldingSet, TalkOpened, AgainOpened),
)
"""These change clocks, also those of single players."""
ANSWERS = (AnswerAccepted, StationAnswered)
COUNTS_ONLY = (*ANSWERS, SeatEntered, SeatLinked, *AT_BENCHES, *ABOUT_CLAIMS, *FLAGS, *OWN_TIME)
OWN_MATTERS = (
    BellRung,
    EntryAssigned,
    RosterSet,
    ItemRekeyed,
    ItemRestored,
    ItemStruck,
    KeyRestored,
    PlayerForgotten,
    PlayerRemoved,
    PlayerRenamed,
    RecordShown,
    ResultShown,
    ReviewEnded,
    RoundClosed,
    StandingsSet,
    StationShown,
    StationsOpened,
    WordsRuled,
    AgainClosed,
)

logger = logging.getLogger(__name__)


@dataclass(slots=True)
class _Due:
    """What a room's audiences are still to be told, and the room as it is after the last change."""

    room: Room
    views: bool = False
    own: bool = False
    in_turn: bool = False
    """Views and own views, but only as often as counts."""
    counts: bool = False
    """Anything at all that seats and walls may notice."""
    players: set[str] = field(default_factory=set)
    """Who alone is to be told of matters that nobody else may notice."""


class Broadcast:
    """Collects changes and tells them from one loop."""

    def __init__(
        self, *, seats: Seats, clock: Clock, emit: Emit, breathe: Callable[[], object] = lambda: None
    ) -> None:
        """Tell the connections in `seats`; `breathe` lets others go on in the middle of a long telling."""
        self._seats = seats
        self._clock = clock
        self._emit = emit
        self._breathe = breathe
        self._due: dict[str, _Due] = {}
        self._marks: dict[str, RoomMarks] = {}
        self._desks = DeskTelling(seats=seats, clock=clock, emit=emit, breathe=breathe, marks=self.marks)
        self._wake = threading.Event()

    def note(self, change: Change) -> None:
        """Remember a committed change; costs the caller nothing more."""
        due = self._due.setdefault(change.room.id, _Due(room=change.room))
        due.room = change.room
        due.players |= concerned(change)
        if all(is_untold(change.room, event) for event in change.events):
            return  # without waking anybody: it must not move the times at which others are told
        due.counts = True
        # A group is small, and every answer and arrival changes who is waited for.
        group = change.room.run is not None
        due.views = due.views or group or any(_changes_views(event) for event in change.events)
        due.own = due.own or group or any(isinstance(event, OWN_MATTERS) for event in change.events)
        due.in_turn = due.in_turn or _changes_benches(change)
        self._wake.set()

    def run_once(self, *, with_tallies: bool) -> None:
        """Tell what is due; counts only if it is their turn."""
        for room in [room for room, due in self._due.items() if due.views or due.own or with_tallies]:
            self._try(self._tell, self._due.pop(room))
        if with_tallies:
            for late in self._desks.waiting():
                self._try(self._desks.tell, late)

    def remind(self, rooms: Iterable[Room]) -> None:
        """Repeat where each room stands, so that a page that missed something learns of it."""
        for room in rooms:
            if room.phase != "preparing":
                self._emit("tally", write(tally_of(room)), to=public_of(room.id))

    def wait(self, seconds: float) -> None:
        """Sleep until something changes, at most so long."""
        self._wake.wait(seconds)
        self._wake.clear()

    def forget(self, rooms: frozenset[str]) -> None:
        """Drop what is remembered of all rooms but these."""
        for room in [room for room in self._marks if room not in rooms]:
            del self._marks[room]
            self._desks.forget(room)

    def marks(self, room: Room) -> RoomMarks:
        """The marks of a room, re-using those of rounds that have not changed."""
        self._marks[room.id] = marks_of_room(room, self._marks.get(room.id))
        return self._marks[room.id]

    def _try(self, telling: Callable[[Any], None], what: Any) -> None:
        try:
            telling(what)
        except Exception:
            logger.exception("a change could not be told; the next view will hold it")

    def _tell(self, due: _Due) -> None:
        room = due.room
        if due.views or due.in_turn:
            view = public_view(room, self.marks(room), self._clock.now())
            self._emit("public", write(view), to=public_of(room.id))
        elif due.counts:
            self._emit("tally", write(tally_of(room)), to=public_of(room.id))
        self._desks.tell(room, at_once=due.views)
        if due.own or due.in_turn:
            self._tell_seats(room)
        elif due.players:
            self._tell_seats(room, only=due.players)

    def _tell_seats(self, room: Room, only: Container[str] | None = None) -> None:
        marks, now, told = self.marks(room), self._clock.now(), round_as_told(room)
        seats = self._seats.in_room(room.id, "seat")
        for number, seat in enumerate([one for one in seats if only is None or one.player in only], 1):
            self._emit("own", write(own_view(room, seat.player, marks, now, told=told)), to=seat.sid)
            if number % BREATHE_EVERY == 0:
                self._breathe()


def keep_telling(
    broadcast: Broadcast, rooms: Callable[[], Iterable[Room]], steady: Callable[[], float]
) -> None:
    """Tell what changes, for ever; `steady` gives seconds of a clock that never jumps."""
    counted_at = reminded_at = 0.0
    while True:
        broadcast.wait(TALLY_EVERY_S)
        now = steady()
        with_tallies = now - counted_at >= TALLY_EVERY_S
        counted_at = now if with_tallies else counted_at
        broadcast.run_once(with_tallies=with_tallies)
        if now - reminded_at >= REMIND_EVERY_S:
            reminded_at = now
            broadcast.remind(rooms())


def tally_of(room: Room) -> Tally:
    """The counts of a room as it now is."""
    return Tally(
        version=told_version(room),
        phase=room.phase,
        round=len(room.rounds),
        players=len(room.players),
        answered=answered(room),
    )


def public_of(room: str) -> str:
    """Name of the Socket.IO room of all seats and walls of a room."""
    return f"public {room}"


def _changes_views(event: Event) -> bool:
    return not isinstance(event, COUNTS_ONLY)


def concerned(change: Change) -> frozenset[str]:
    """The players who alone are to hear of a change that concerns their own time."""
    if any(isinstance(event, CLOCKS) for event in change.events):
        room = change.room
        return frozenset(player.id for player in room.players.values() if has_more_time(room, player))
    return frozenset(event.player for event in change.events if isinstance(event, MORE_TIME))


def _changes_benches(change: Change) -> bool:
    # Every answer changes how many of a bench have answered alone.
    if change.room.plan.benches is None or hides_counts(change.room):
        return any(isinstance(event, AT_BENCHES) for event in change.events)
    return any(isinstance(event, (*ANSWERS, *AT_BENCHES)) for event in change.events)
