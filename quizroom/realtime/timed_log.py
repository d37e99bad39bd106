"""The event log with a watch beside it: how long each commit takes."""

from collections.abc import Callable, Collection, Mapping, Sequence

from quizroom.room.events import Event
from quizroom.service.ports import Entry, EventLog


class TimedLog:
    """`service.ports.EventLog` that tells `committed` how many events each commit held, and its seconds."""

    def __init__(
        self, log: EventLog, *, steady: Callable[[], float], committed: Callable[[int, float], None]
    ) -> None:
        """Time the commits of `log` by `steady`, in seconds of a clock that never jumps."""
        self._log = log
        self._steady = steady
        self._committed = committed

    def append(self, entries: Sequence[Entry]) -> None:
        """Commit all entries or none; only a commit that succeeds is counted."""
        began = self._steady()
        self._log.append(entries)
        self._committed(len(entries), self._steady() - began)

    def read(self, room: str, after: int = 0, most: int | None = None) -> tuple[Event, ...]:
        """As the log reads."""
        return self._log.read(room, after, most)

    def room_of_door(self, door_code: str) -> str | None:
        """As the log finds."""
        return self._log.room_of_door(door_code)

    def rooms_of_host(self, host: str) -> tuple[str, ...]:
        """As the log lists."""
        return self._log.rooms_of_host(host)

    def rooms_with_picture(self, name: str) -> tuple[str, ...]:
        """As the log finds."""
        return self._log.rooms_with_picture(name)

    def rooms_of_roster(self, roster: str) -> tuple[str, ...]:
        """As the log lists."""
        return self._log.rooms_of_roster(roster)

    def versions(self, of: Collection[str]) -> Mapping[str, int]:
        """As the log counts."""
        return self._log.versions(of)

    def unfinished_rooms(self) -> tuple[str, ...]:
        """As the log lists."""
        return self._log.unfinished_rooms()
