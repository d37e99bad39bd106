"""An item put into a review beside those that were dealt: the order, the fact, and the rule between them."""

from dataclasses import dataclass, replace

from quizroom.questions.blueprint import MOST_ROUNDS
from quizroom.questions.model import Item
from quizroom.room.refusals import Refused
from quizroom.room.state import Room


@dataclass(frozen=True, slots=True, kw_only=True)
class AddItem:
    """Put an item in this place among those ahead; the ones from there on move down."""

    position: int
    item: Item


@dataclass(frozen=True, slots=True, kw_only=True)
class ItemAdded:
    """An item was put in this place among those ahead."""

    position: int
    item: Item


def add(room: Room, command: AddItem) -> tuple[ItemAdded, ...]:
    """Put an item in, unless it is in the review already; one that is long gone may come again."""
    if room.phase == "finished":
        raise Refused("finished")
    known = (
        *(current.item for current in room.rounds),
        *(() if room.stations is None else room.stations.items),
        *room.ahead,
    )
    if any(item.id == command.item.id for item in known):
        return ()
    if len(known) >= MOST_ROUNDS:
        raise Refused("too_many_items")
    return (ItemAdded(position=min(command.position, len(room.ahead)), item=command.item),)


def with_added(room: Room, event: ItemAdded) -> Room:
    """The room with the item in its place."""
    place = event.position
    return replace(room, ahead=(*room.ahead[:place], event.item, *room.ahead[place:]))
