"""Carrying out orders: decided in turns, committed together, then acknowledged.

All orders that have gathered while the turn before was being committed are decided one after
another and committed in one transaction. Only then do their callers return.

Where other processes write to the same log, an order is decided by what the log holds after the order came:
an append shows whether the state was new enough, and whatever ends without one is decided again if there is
news.
"""

import threading
from collections.abc import Callable, Iterable
from dataclasses import dataclass, field
from datetime import datetime
from functools import reduce
from typing import Protocol

from quizroom.room.commands import Command, PrepareReview
from quizroom.room.events import Event
from quizroom.room.folding import apply, replay
from quizroom.room.laying_out import prepare
from quizroom.room.refusals import Refused
from quizroom.room.rules import decide
from quizroom.room.state import Room
from quizroom.service.ports import Clock, Entry, EventLog, NotStored, VersionTaken

MOST_TRIES = 50
"""How often a turn is decided anew when another process was faster."""


class UnknownRoom(Exception):
    """No room has this id."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Change:
    """What has been added to one room: by a turn of ours, or by another process."""

    room: Room
    events: tuple[Event, ...]
    ours: bool = True


@dataclass(slots=True, kw_only=True)
class _Ticket:
    """An order on its way through a turn."""

    room: str
    command: Command
    at: datetime
    """When it was received: waiting for its turn must not make anybody late."""
    outcome: Room | Exception | None = None


class Signal(Protocol):
    """Lets any number of callers wait until something is done, as `threading.Event` does."""

    def set(self) -> object:
        """Let all go on."""

    def wait(self) -> object:
        """Return once it is set."""


@dataclass(slots=True)
class _Gathering:
    """Orders that will be decided in one turn; whoever came first leads it."""

    over: Signal
    tickets: list[_Ticket] = field(default_factory=list)


@dataclass(slots=True)
class _Turn:
    """The drafts of one turn, before they are committed."""

    rooms: dict[str, Room] = field(default_factory=dict)
    events: dict[str, list[Event]] = field(default_factory=dict)
    outcomes: list[Room | Exception] = field(default_factory=list)
    idle: set[str] = field(default_factory=set)
    """Rooms in which some order has led to nothing: it was refused, or carried out before."""


class Rooms:
    """The live rooms of this process, each the fold of its committed log."""

    def __init__(
        self,
        *,
        log: EventLog,
        clock: Clock,
        on_change: Callable[[Change], None],
        gather: Callable[[], None] = lambda: None,
        shared: bool = False,
        new_signal: Callable[[], Signal] = threading.Event,
    ) -> None:
        """Serve rooms from `log`.

        Args:
            log: where all that happens is committed.
            clock: gives the time of receipt.
            on_change: is told after a commit, and of what other processes have committed.
            gather: waits for more orders before a turn.
            shared: whether other processes write to the same log.
            new_signal: makes what the orders of a turn wait on.
        """
        self._log = log
        self._clock = clock
        self._on_change = on_change
        self._gather = gather
        self._shared = shared
        self._live: dict[str, Room] = {}
        self._new_signal = new_signal
        self._gathering: _Gathering | None = None
        self._door = threading.Lock()
        self._turn_lock = threading.Lock()
        self._waking: dict[str, threading.Lock] = {}

    def handle(self, room: str, command: Command) -> Room:
        """Carry out an order and return the room after it, once it is durable.

        Raises:
            Refused: the order cannot be carried out.
            UnknownRoom: there is no such room.
            NotStored: the store failed; nothing happened.
        """
        ticket = _Ticket(room=room, command=command, at=self._clock.now())
        with self._door:
            leads = self._gathering is None
            gathering = self._gathering = self._gathering or _Gathering(self._new_signal())
            gathering.tickets.append(ticket)
        if leads:
            self._lead(gathering)
        else:
            gathering.over.wait()
        if isinstance(ticket.outcome, Room):
            return ticket.outcome
        raise ticket.outcome or UnknownRoom(room)

    def room(self, room: str) -> Room:
        """The live state of a room.

        Raises:
            UnknownRoom: there is no such room.
        """
        known = self.find(room)
        if known is None:
            raise UnknownRoom(room)
        return known

    def find(self, room: str) -> Room | None:
        """The live state of a room, or None if there is no such room."""
        known = self._live.get(room)
        return known if known is not None else self._woken(room)

    def fresh(self, room: str) -> Room:
        """The state of a room as the log has it now, whoever wrote it.

        Raises:
            UnknownRoom: there is no such room.
        """
        known = self.room(room)
        if self._shared and self._log.read(room, after=known.version):
            self.catch_up(room)
        return self.room(room)

    def catch_up(self, room: str) -> None:
        """Take in what other processes have written to a live room, and tell of it."""
        with self._turn_lock:
            if room in self._live:
                self._read_on([room])

    def live(self) -> tuple[Room, ...]:
        """All rooms that this process has in memory."""
        return tuple(self._live.values())

    def live_behind(self, door_code: str) -> str | None:
        """The unfinished room in memory with this door code, if any."""
        found = (room.id for room in self._live.values() if room.door_code == door_code != "")
        return next((room for room in found if self._live[room].phase != "finished"), None)

    def forget(self, room: str) -> None:
        """Drop a room from memory; its log stays."""
        self._live.pop(room, None)

    def _woken(self, room: str) -> Room | None:
        # A whole class may come over from a worker that died: its room is read once, not by each of them.
        with self._waking.setdefault(room, threading.Lock()):
            known = self._live.get(room) or replay(self._log.read(room))
            self._waking.pop(room, None)
            return None if known is None else self._live.setdefault(room, known)

    def _lead(self, gathering: _Gathering) -> None:
        try:
            with self._turn_lock:
                self._gather()
                with self._door:
                    self._gathering = None
                self._take_turn(gathering.tickets)
        finally:
            gathering.over.set()

    def _take_turn(self, tickets: list[_Ticket]) -> None:
        try:
            turn = self._committed(tickets)
        except Exception as failure:  # noqa: BLE001 - every caller in this turn must learn of it, not only one
            for ticket in tickets:
                ticket.outcome = failure
            return
        self._live.update(turn.rooms)
        for ticket, outcome in zip(tickets, turn.outcomes, strict=True):
            ticket.outcome = outcome
        for room, events in turn.events.items():
            self._on_change(Change(room=turn.rooms[room], events=tuple(events)))

    def _committed(self, tickets: list[_Ticket]) -> _Turn:
        may_be_stale = self._shared
        for _ in range(MOST_TRIES):
            turn = self._decided(tickets)
            if may_be_stale and turn.idle:
                may_be_stale = False
                if self._read_on(turn.idle):
                    continue
            try:
                self._append(turn)
            except VersionTaken as taken:
                self._read_on(taken.rooms)
            else:
                return turn
        raise NotStored("other processes wrote to the same rooms all the time")

    def _decided(self, tickets: list[_Ticket]) -> _Turn:
        turn = _Turn()
        for ticket in tickets:
            try:
                turn.outcomes.append(self._decided_one(turn, ticket))
            except Exception as refusal:  # noqa: BLE001 - one bad order must not spoil the others of its turn
                turn.outcomes.append(refusal)
                turn.idle.add(ticket.room)
        return turn

    def _decided_one(self, turn: _Turn, ticket: _Ticket) -> Room:
        if isinstance(ticket.command, PrepareReview):
            events = prepare(ticket.room, ticket.command, ticket.at)
            room = replay(events)
            if room is None or ticket.room in self._live or ticket.room in turn.rooms:
                raise Refused("wrong_phase")
        else:
            room = turn.rooms.get(ticket.room) or self.room(ticket.room)
            events = decide(room, ticket.command, ticket.at)
            room = reduce(apply, events, room)
        if events:
            turn.rooms[ticket.room] = room
            turn.events.setdefault(ticket.room, []).extend(events)
        else:
            turn.idle.add(ticket.room)
        return room

    def _append(self, turn: _Turn) -> None:
        entries = [
            Entry(room=room, version=turn.rooms[room].version - len(events) + index + 1, event=event)
            for room, events in turn.events.items()
            for index, event in enumerate(events)
        ]
        if entries:
            self._log.append(entries)

    def _read_on(self, rooms: Iterable[str]) -> bool:
        """Fold in what other processes have written, and tell of it; whether there was anything."""
        news = [self._read_on_one(room) for room in rooms]
        return any(news)

    def _read_on_one(self, room: str) -> bool:
        known = self._live.get(room)
        if known is None:
            return self.find(room) is not None
        events = self._log.read(room, after=known.version)
        if events:
            self._live[room] = reduce(apply, events, known)
            self._on_change(Change(room=self._live[room], events=events, ours=False))
        return bool(events)
