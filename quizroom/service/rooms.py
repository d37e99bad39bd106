"""Carrying out orders: decided in turns, committed together, then acknowledged.

All orders that have gathered while the turn before was being committed are decided one after
another and committed in one transaction. Only then do their callers return.
"""

import threading
from collections.abc import Callable
from dataclasses import dataclass, field

from quizroom.room.commands import Command, PrepareReview
from quizroom.room.events import Event
from quizroom.room.folding import apply, replay
from quizroom.room.laying_out import prepare
from quizroom.room.refusals import Refused
from quizroom.room.rules import decide
from quizroom.room.state import Room
from quizroom.service.ports import Clock, Entry, EventLog, NotStored, VersionTaken

MOST_TRIES = 8
"""How often a turn is decided anew when another process was faster."""


class UnknownRoom(Exception):
    """No room has this id."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Change:
    """What a turn has added to one room."""

    room: Room
    events: tuple[Event, ...]


@dataclass(slots=True, kw_only=True)
class _Ticket:
    """An order on its way through a turn."""

    room: str
    command: Command
    outcome: Room | Exception | None = None


@dataclass(slots=True)
class _Turn:
    """The drafts of one turn, before they are committed."""

    rooms: dict[str, Room] = field(default_factory=dict)
    events: dict[str, list[Event]] = field(default_factory=dict)
    outcomes: list[Room | Exception] = field(default_factory=list)


class Rooms:
    """The live rooms of this process, each the fold of its committed log."""

    def __init__(
        self,
        *,
        log: EventLog,
        clock: Clock,
        on_change: Callable[[Change], None],
        gather: Callable[[], None] = lambda: None,
    ) -> None:
        """Serve rooms from `log`; `on_change` is told after a commit; `gather` waits for more orders."""
        self._log = log
        self._clock = clock
        self._on_change = on_change
        self._gather = gather
        self._live: dict[str, Room] = {}
        self._inbox: list[_Ticket] = []
        self._turn_lock = threading.Lock()

    def handle(self, room: str, command: Command) -> Room:
        """Carry out an order and return the room after it, once it is durable.

        Raises:
            Refused: the order cannot be carried out.
            UnknownRoom: there is no such room.
            NotStored: the store failed; nothing happened.
        """
        ticket = _Ticket(room=room, command=command)
        self._inbox.append(ticket)
        with self._turn_lock:
            # Whoever held the lock before may have taken this order along in the same commit.
            if ticket.outcome is None:
                self._gather()
                self._take_turn()
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
        known = self._live.get(room) or replay(self._log.read(room))
        return None if known is None else self._live.setdefault(room, known)

    def live(self) -> tuple[Room, ...]:
        """All rooms that this process has in memory."""
        return tuple(self._live.values())

    def forget(self, room: str) -> None:
        """Drop a room from memory; its log stays."""
        self._live.pop(room, None)

    def _take_turn(self) -> None:
        # The list itself stays: another thread may be about to put its order in.
        tickets = self._inbox[:]
        del self._inbox[: len(tickets)]
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
        for _ in range(MOST_TRIES):
            turn = self._decided(tickets)
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
        return turn

    def _decided_one(self, turn: _Turn, ticket: _Ticket) -> Room:
        now = self._clock.now()
        if isinstance(ticket.command, PrepareReview):
            events = prepare(ticket.room, ticket.command, now)
            room = replay(events)
            if room is None or ticket.room in self._live or ticket.room in turn.rooms:
                raise Refused("wrong_phase")
        else:
            room = turn.rooms.get(ticket.room) or self.room(ticket.room)
            events = decide(room, ticket.command, now)
            for event in events:
                room = apply(room, event)
        if events:
            turn.rooms[ticket.room] = room
            turn.events.setdefault(ticket.room, []).extend(events)
        return room

    def _append(self, turn: _Turn) -> None:
        entries = [
            Entry(room=room, version=turn.rooms[room].version - len(events) + index + 1, event=event)
            for room, events in turn.events.items()
            for index, event in enumerate(events)
        ]
        if entries:
            self._log.append(entries)

    def _read_on(self, rooms: tuple[str, ...]) -> None:
        for room in rooms:
            known = self._live.get(room)
            if known is None:
                continue
            for event in self._log.read(room, after=known.version):
                known = apply(known, event)
            self._live[room] = known
