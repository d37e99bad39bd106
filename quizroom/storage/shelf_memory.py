"""The list of reviews in memory, for tests; the same contract."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import datetime

from quizroom.room.folding import replay
from quizroom.room.stations import items_to_come
from quizroom.service.ports import EventLog
from quizroom.service.review_list import ListedReview


@dataclass(frozen=True, slots=True)
class _Note:
    planned_at: datetime | None = None
    opens_itself: bool = False
    archived_at: datetime | None = None


class MemoryReviewShelf:
    """`service.review_list.ReviewShelf` over any log."""

    def __init__(self, log: EventLog) -> None:
        """List what is in this log."""
        self._log = log
        self._notes: dict[str, _Note] = {}

    def of_host(self, host: str) -> Sequence[ListedReview]:
        """All reviews of a host, newest first."""
        return [self._listed(room) for room in self._log.rooms_of_host(host)]

    def plan(self, room: str, at: datetime | None, *, opens_itself: bool) -> None:
        """Note when a review is planned, or that it is not."""
        noted = self._notes.get(room, _Note())
        self._notes[room] = replace(noted, planned_at=at, opens_itself=opens_itself)

    def archive(self, room: str, at: datetime | None) -> None:
        """Put a review away, or take it out again."""
        self._notes[room] = replace(self._notes.get(room, _Note()), archived_at=at)

    def doors_due(self, after: datetime, until: datetime) -> tuple[str, ...]:
        """Reviews whose door is shut and is to open by itself, planned in that time and not put away."""
        due = sorted(
            (note.planned_at, room)
            for room, note in self._notes.items()
            if note.planned_at is not None
            and after < note.planned_at <= until
            and note.opens_itself
            and note.archived_at is None
        )
        listed = [self._listed(room) for _, room in due if self._log.read(room)]
        return tuple(one.room for one in listed if not one.door_opened and one.finished_at is None)

    def _listed(self, room_id: str) -> ListedReview:
        room = replay(self._log.read(room_id))
        if room is None or room.prepared_at is None:
            raise LookupError(room_id)
        note = self._notes.get(room_id, _Note())
        return ListedReview(
            room=room_id,
            title=room.plan.title,
            course=room.plan.course_title,
            rounds=len(room.rounds) + len(items_to_come(room)),
            prepared_at=room.prepared_at,
            door_opened=bool(room.door_code),
            finished_at=room.finished_at,
            planned_at=note.planned_at,
            opens_itself=note.opens_itself,
            archived_at=note.archived_at,
        )
