"""A clock that is set by hand, and logs that are slow or broken on purpose."""

from collections.abc import Callable, Iterable, Sequence
from datetime import datetime, timedelta

from quizroom.room.commands import Command, OpenDoor, OpenRound
from quizroom.room.events import Event
from quizroom.room.folding import replay
from quizroom.room.state import Room
from quizroom.service.ports import Entry, EventLog
from quizroom.service.rooms import Change, Rooms
from quizroom.storage.memory import MemoryEventLog
from tests.room.samples import NOON, preparation, seat


class SetClock:
    """`service.ports.Clock` that stands until it is moved."""

    def __init__(self, at: datetime = NOON) -> None:
        """Begin at a moment."""
        self._at = at

    def now(self) -> datetime:
        """The moment it is set to."""
        return self._at

    def move(self, seconds: float) -> None:
        """Let so many seconds pass."""
        self._at += timedelta(seconds=seconds)


class QuickPasswords:
    """`service.passwords.Passwords` that takes no time and counts its work; an outdated hash begins `old`."""

    def __init__(self) -> None:
        """Begin with nothing done."""
        self.checked = self.letters = 0

    def hashed(self, password: str) -> str:
        """The password turned round: enough to tell it from itself."""
        self.checked += 1
        self.letters += len(password)
        return f"hash of {password[::-1]}"

    def fits(self, password_hash: str, password: str) -> bool:
        """Whether the hash was made of this password."""
        self.checked += 1
        self.letters += len(password)
        return password_hash.removeprefix("old ") == f"hash of {password[::-1]}"

    def is_outdated(self, password_hash: str) -> bool:
        """Whether it says so itself."""
        return password_hash.startswith("old ")


class WatchedLog(MemoryEventLog):
    """A log in memory that counts its turns, and fails while a failure is set, for all or for a room."""

    def __init__(self) -> None:
        """Begin sound."""
        super().__init__()
        self.turns: list[int] = []
        self.failure: Exception | None = None
        self.failures_of: dict[str, Exception] = {}

    def append(self, entries: Sequence[Entry]) -> None:
        """Append, or fail before anything is appended."""
        failure = self.failure or next(iter(self._failures(*(entry.room for entry in entries))), None)
        if failure is not None:
            raise failure
        super().append(entries)
        self.turns.append(len(entries))

    def read(self, room: str, after: int = 0, most: int | None = None) -> tuple[Event, ...]:
        """Read, or fail if this room is to fail."""
        for failure in self._failures(room):
            raise failure
        return super().read(room, after, most)

    def erase(self, room: str) -> None:
        """Erase a room, as a database does."""
        self._events.pop(room, None)

    def _failures(self, *rooms: str) -> list[Exception]:
        return [self.failures_of[room] for room in rooms if room in self.failures_of]


class Desk:
    """Live rooms over a log, with what they told of changes."""

    def __init__(
        self, log: EventLog | None = None, gather: Callable[[], None] = lambda: None, *, shared: bool = False
    ) -> None:
        """Serve from this log, or a fresh one in memory; `shared` if another program does, too."""
        self.log = log or WatchedLog()
        self.clock = SetClock()
        self.told: list[Change] = []
        self.rooms = Rooms(
            log=self.log, clock=self.clock, on_change=self.told.append, gather=gather, shared=shared
        )

    def logged(self, room: str = "room-1") -> tuple[Event, ...]:
        """What the log holds."""
        return self.log.read(room)

    def folded(self, room: str = "room-1") -> Room | None:
        """What a fresh start would make of the log."""
        return replay(self.logged(room))


def seated(log: EventLog | None = None, players: Iterable[str] = ("ada", "bo")) -> Desk:
    """A desk over a room with these players, its first round open."""
    desk = Desk(log)
    seats = [seat(player) for player in players]
    orders: list[Command] = [preparation(), OpenDoor(door_code="CDFHJ"), *seats, OpenRound(round=1)]
    for command in orders:
        desk.rooms.handle("room-1", command)
    return desk
