"""Stores in memory, for tests and for trying things out. They keep the same contract."""

from collections.abc import Callable, Collection, Sequence
from datetime import datetime

from quizroom.room.events import DoorOpened, Event, ReviewEnded, ReviewPrepared
from quizroom.room.folding import replay
from quizroom.room.host_events import ReviewHandedOver
from quizroom.room.owner_events import PlayerForgotten, SeatLinked
from quizroom.room.owners import redacted
from quizroom.service.ports import Entry, VersionTaken
from quizroom.storage.picture_index import pictures_in


class MemoryEventLog:
    """`service.ports.EventLog` in a dictionary."""

    def __init__(self) -> None:
        """Begin with no rooms."""
        self._events: dict[str, list[Event]] = {}

    def append(self, entries: Sequence[Entry]) -> None:
        """Append all or none. Raises `VersionTaken`."""
        lengths = {entry.room: len(self._events.get(entry.room, ())) for entry in entries}
        for entry in entries:
            lengths[entry.room] += 1
            if entry.version != lengths[entry.room]:
                raise VersionTaken(tuple(sorted({each.room for each in entries})))
        for entry in entries:
            self._redact(entry)
            self._events.setdefault(entry.room, []).append(entry.event)

    def read(self, room: str, after: int = 0, most: int | None = None) -> tuple[Event, ...]:
        """The events of a room above a version, no more than `most`."""
        return tuple(self._events.get(room, ())[after:][:most])

    def room_of_door(self, door_code: str) -> str | None:
        """The room with this code: an unfinished one before finished ones, the newest first."""
        unfinished = set(self.unfinished_rooms())
        found = [
            (room in unfinished, prepared.at, room)
            for room, prepared in self._prepared()
            if any(
                isinstance(each, DoorOpened) and each.door_code == door_code for each in self._events[room]
            )
        ]
        return max(found)[2] if found else None

    def rooms_of_host(self, host: str) -> tuple[str, ...]:
        """All rooms of a host, newest first."""
        mine = [(prepared.at, room) for room, prepared in self._prepared() if self._host(room) == host]
        return tuple(room for _, room in sorted(mine, reverse=True))

    def rooms_of_roster(self, roster: str) -> tuple[str, ...]:
        """All rooms whose review is for credit by this roster, oldest first."""
        found = [(prepared.at, room) for room, prepared in self._prepared() if self._roster(room) == roster]
        return tuple(room for _, room in sorted(found)) if roster else ()

    def _roster(self, room: str) -> str:
        known = replay(self._events[room])
        return "" if known is None else known.plan.roster

    def unfinished_rooms(self) -> tuple[str, ...]:
        """All rooms whose review has not ended, oldest first."""
        open_ones = [
            (prepared.at, room)
            for room, prepared in self._prepared()
            if not any(isinstance(happened, ReviewEnded) for happened in self._events[room])
        ]
        return tuple(room for _, room in sorted(open_ones))

    def rooms_with_picture(self, name: str) -> tuple[str, ...]:
        """All rooms in whose items this picture is or was."""
        found = (
            room
            for room, happened in self._events.items()
            if any(name in pictures_in(each) for each in happened)
        )
        return tuple(sorted(found))

    def versions(self, of: Collection[str]) -> dict[str, int]:
        """The newest version of each of these rooms that is there."""
        return {room: len(self._events[room]) for room in of if room in self._events}

    def _redact(self, entry: Entry) -> None:
        if isinstance(entry.event, SeatLinked | PlayerForgotten):
            self._events[entry.room] = list(redacted(self._events[entry.room], entry.event))

    def _host(self, room: str) -> str:
        of_host = (ReviewPrepared, ReviewHandedOver)
        return [event.host for event in self._events[room] if isinstance(event, of_host)][-1]

    def _prepared(self) -> list[tuple[str, ReviewPrepared]]:
        firsts = ((room, happened[0]) for room, happened in self._events.items())
        return [(room, first) for room, first in firsts if isinstance(first, ReviewPrepared)]


class MemoryAccounts:
    """`service.ports.Accounts` in dictionaries."""

    def __init__(self) -> None:
        """Begin with nobody."""
        self._keys: dict[str, tuple[str, datetime]] = {}
        self._hosts: dict[str, tuple[str, datetime]] = {}

    def add_entry_key(self, key_hash: str, host: str, expires_at: datetime) -> None:
        """Keep a one-time key."""
        self._keys[key_hash] = host, expires_at

    def spend_entry_key(self, key_hash: str, now: datetime) -> str | None:
        """Use up a one-time key."""
        host, expires_at = self._keys.pop(key_hash, ("", now))
        return host if now < expires_at else None

    def add_host_token(self, token_hash: str, host: str, now: datetime) -> None:
        """Keep a host's token."""
        self._hosts[token_hash] = host, now

    def host_of_token(self, token_hash: str, *, made_after: datetime) -> str | None:
        """The host to whom this token belongs."""
        host, made_at = self._hosts.get(token_hash, ("", made_after))
        return host if made_at > made_after else None

    def drop_host_token(self, token_hash: str) -> None:
        """Let a token open nothing any more."""
        self._hosts.pop(token_hash, None)

    def drop_tokens_of(self, host: str) -> None:
        """Let all tokens and one-time keys of a host open nothing any more."""
        self._hosts = {token: of for token, of in self._hosts.items() if of[0] != host}
        self._keys = {key: of for key, of in self._keys.items() if of[0] != host}

    def drop_tokens_before(self, made_before: datetime) -> None:
        """Remove tokens that are too old to open anything."""
        self._hosts = {token: of for token, of in self._hosts.items() if of[1] > made_before}


class MemoryHeartbeat:
    """`service.ports.Heartbeat` in a variable."""

    def __init__(self) -> None:
        """Begin without a beat."""
        self._at: datetime | None = None

    def beat(self, now: datetime) -> None:
        """Note the time, unless a later one is noted."""
        self._at = now if self._at is None else max(now, self._at)

    def last_beat(self) -> datetime | None:
        """The time noted last."""
        return self._at


class SilentNotices:
    """`service.ports.Notices` where nobody is told, and `fault` says why, if there is anybody to tell."""

    def __init__(self, fault: str = "") -> None:
        """Keep silent."""
        self._fault = fault

    def loops(
        self,
        hear: Callable[[str, int], None],  # noqa: ARG002 - the contract has it
        hear_again: Callable[[], None],  # noqa: ARG002 - likewise
    ) -> tuple[Callable[[], None], ...]:
        """None: nothing is heard."""
        return ()

    def publish(self, room: str, version: int) -> None:
        """Tell nobody."""

    def fault(self) -> str:
        """Why nobody is told."""
        return self._fault
