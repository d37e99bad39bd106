"""What hosts take away of their reviews: the marks of a class by its roster."""

from collections.abc import Callable, Collection
from dataclasses import dataclass

from quizroom.marking import marks_of_room
from quizroom.room.folding import replay
from quizroom.room.state import Room
from quizroom.service.ports import EventLog
from quizroom.views.gradebook import ReviewMarks, review_marks


@dataclass(frozen=True, slots=True, kw_only=True)
class Gradebooks:
    """Computes gradebooks from the logs; `breathe` lets others go on between two reviews."""

    log: EventLog
    breathe: Callable[[], None] = lambda: None

    def columns(self, host: str, roster: str, only: Collection[str] | None = None) -> tuple[ReviewMarks, ...]:
        """The host's reviews for credit by a roster, oldest first: all, or those whose rooms are named."""
        found: list[ReviewMarks] = []
        for room_id in self.log.rooms_of_roster(roster):
            room = self._room(room_id) if only is None or room_id in only else None
            if room is not None and room.host == host:
                found.append(review_marks(room, marks_of_room(room)))
            self.breathe()
        return tuple(found)

    def _room(self, room: str) -> Room | None:
        # Not through the live rooms: a look at old reviews must not fill the memory with them.
        return replay(self.log.read(room))
