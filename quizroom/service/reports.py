"""Reports of reviews and courses for their host, computed when asked for and kept until the log goes on."""

from collections.abc import Callable
from dataclasses import dataclass, field, replace
from functools import reduce
from typing import TYPE_CHECKING

from quizroom.marking import RoomMarks, marks_of_room
from quizroom.room.events import ReviewPrepared
from quizroom.room.folding import apply, replay
from quizroom.room.state import Room
from quizroom.service.ports import EventLog, NotStored
from quizroom.service.rooms import Rooms

if TYPE_CHECKING:
    from quizroom.analysis.course_report import CourseReport
    from quizroom.analysis.review_report import ReviewReport

AT_ONCE = 200
"""Events that are read and folded between two breaths."""
MOST_KEPT = 200


@dataclass(frozen=True, slots=True, kw_only=True)
class Reports:
    """Makes reports out of the log. `breathe` lets rooms be served in between: a report takes its time."""

    rooms: Rooms
    log: EventLog
    breathe: Callable[[], None] = lambda: None
    kept: "dict[str, ReviewReport]" = field(default_factory=dict)
    """By room, the one that was asked for last at the end."""
    courses: dict[str, str] = field(default_factory=dict)
    """The course list of each room, which never changes."""

    def review(self, room: str, *, host: str) -> "ReviewReport | None":
        """The report of a review as the log has it now; None if this host has no such review."""
        return self._report(room) if room in self.log.rooms_of_host(host) else None

    def course(self, course: str, *, host: str) -> "CourseReport | None":
        """All this host's reviews of a course list; None if there are none that anybody answered."""
        from quizroom.analysis.course_report import course_report  # noqa: PLC0415 - only who asks pays

        mine = [room for room in self.log.rooms_of_host(host) if self._course_of(room) == course]
        found = [report for report in map(self._report, mine) if report is not None]
        return course_report(found)

    def course_of(self, room: str, *, host: str) -> str:
        """The course list of a review of this host; "" where there is none."""
        return self._course_of(room) if room in self.log.rooms_of_host(host) else ""

    def _course_of(self, room: str) -> str:
        if room not in self.courses:
            (first,) = self.log.read(room, most=1) or (None,)
            self.courses[room] = first.plan.course if isinstance(first, ReviewPrepared) else ""
            self.breathe()
        return self.courses[room]

    def _report(self, room: str) -> "ReviewReport | None":
        from quizroom.analysis.review_report import review_report  # noqa: PLC0415 - likewise

        version = self.log.versions([room]).get(room, 0)
        known = self.kept.pop(room, None)
        if known is None or known.version != version:
            found = self._folded(room, version)
            known = None if found is None else review_report(found, self._marked(found), self.breathe)
        if known is not None:
            self.kept[room] = known
            while len(self.kept) > MOST_KEPT:
                del self.kept[next(iter(self.kept))]
        self.breathe()
        return known

    def tidy(self) -> None:
        """Drop what the log has left behind: a review that was erased, or a player who was forgotten in it.

        If the log cannot be read everything is dropped, and computed again when asked for.
        """
        try:
            now = self.log.versions(list(self.kept)) if self.kept else {}
        except NotStored:
            now = {}
        for room, report in list(self.kept.items()):
            if now.get(room) != report.version:
                self.kept.pop(room, None)

    def _marked(self, room: Room) -> RoomMarks:
        """The marks of a room, computed round by round: typed answers take their time."""
        known = marks_of_room(replace(room, rounds=room.rounds[:1]))
        for number in range(2, len(room.rounds) + 1):
            self.breathe()
            known = marks_of_room(replace(room, rounds=room.rounds[:number]), known)
        return known

    def _folded(self, room: str, version: int) -> Room | None:
        live = next((one for one in self.rooms.live() if one.id == room), None)
        if live is not None and live.version >= version:
            return live
        # Not into the live rooms: a look at old reviews must not fill the memory with them.
        found = replay(self.log.read(room, most=AT_ONCE))
        while found is not None and (more := self.log.read(room, found.version, AT_ONCE)):
            self.breathe()
            found = reduce(apply, more, found)
        return found
