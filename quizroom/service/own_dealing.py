"""A host's own items among those that were dealt."""

from dataclasses import dataclass

from quizroom.questions.model import Item
from quizroom.questions.syllabus import syllabus_of
from quizroom.room.adding import AddItem
from quizroom.room.commands import SwapItem
from quizroom.room.laying_out import is_gone
from quizroom.room.state import Room
from quizroom.service.own_items import OwnItems
from quizroom.service.reviews import Reviews


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnDealing:
    """Puts items of the library into reviews; there they stay as they were, however they are mended later."""

    reviews: Reviews
    own_items: OwnItems

    def add(self, room: Room, own_item: str, *, position: int) -> Room:
        """Put an item of the room's host in a place ahead; the same order again changes nothing.

        Raises:
            NoSuchOwnItem: the host has none with this id.
            NotReady: it has something to mend.
            UnknownCourse: the review's course list is not here, so its records cannot be told.
            Refused: by the room.
        """
        return self.reviews.rooms.handle(room.id, AddItem(position=position, item=self._item(room, own_item)))

    def swap(self, room: Room, own_item: str, *, position: int, instead_of: str) -> Room:
        """Put an item of the room's host in the place of another. Raises as `add` does."""
        if is_gone(room, instead_of):
            return room
        order = SwapItem(position=position, instead_of=instead_of, item=self._item(room, own_item))
        return self.reviews.rooms.handle(room.id, order)

    def _item(self, room: Room, own_item: str) -> Item:
        syllabus = syllabus_of(self.reviews.catalogue, self.reviews.course(room.plan.course))
        return self.own_items.for_review(room.host, own_item, syllabus, room.plan.seed)
