"""Reviews that were read from files: laid out anew, or kept as they were played."""

from collections.abc import Mapping, Sequence
from contextlib import suppress
from dataclasses import dataclass

from quizroom.questions.model import Item
from quizroom.room.commands import PrepareReview
from quizroom.room.events import Event
from quizroom.room.refusals import Refused
from quizroom.room.state import Plan, Room
from quizroom.service.pictures import Drawing, Pictures
from quizroom.service.ports import Entry, EventLog, VersionTaken
from quizroom.service.reviews import room_of_order
from quizroom.service.rooms import Rooms


@dataclass(frozen=True, slots=True, kw_only=True)
class FiledReviews:
    """The service; what it is given has been checked in every part."""

    rooms: Rooms
    log: EventLog
    pictures: Pictures

    def room_of(self, host: str, order: str) -> tuple[str, Room | None]:
        """The id of the room that this order of a host makes, and that room if it was made before."""
        room_id = room_of_order(host, f"file {order}")
        return room_id, self.rooms.find(room_id)

    def keep_pictures(self, host: str, drawings: Mapping[str, Drawing]) -> dict[str, str]:
        """Keep the pictures of a file; their names here by those in the file. Raises `TooManyPictures`."""
        return {name: self.pictures.keep(host, drawing).name for name, drawing in drawings.items()}

    def lay_out(self, room_id: str, plan: Plan, items: tuple[Item, ...], *, host: str) -> Room:
        """Lay the review out for this host, its door still shut."""
        try:
            return self.rooms.handle(room_id, PrepareReview(plan=plan, items=items, host=host))
        except Refused:  # the same order was carried out elsewhere meanwhile
            return self.rooms.room(room_id)

    def keep_played(self, room_id: str, events: Sequence[Event]) -> Room:
        """Keep a review with all that happened in it, in one transaction."""
        entries = [
            Entry(room=room_id, version=version, event=event) for version, event in enumerate(events, 1)
        ]
        with suppress(VersionTaken):  # likewise
            self.log.append(entries)
        return self.rooms.room(room_id)
