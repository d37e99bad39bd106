"""Orders about the review as laid out: its items, its door, its standings."""

from datetime import datetime
from typing import NoReturn

from quizroom.room.commands import DropItem, OpenDoor, PrepareReview, ShowStandings, SwapItem
from quizroom.room.events import DoorOpened, Event, ItemDropped, ItemSwapped, ReviewPrepared, StandingsSet
from quizroom.room.refusals import Refused
from quizroom.room.state import Room


def prepare(room_id: str, command: PrepareReview, now: datetime) -> tuple[Event, ...]:
    """Begin the log of a new room."""
    if not command.items:
        raise Refused("no_items_left")
    return (ReviewPrepared(room=room_id, host=command.host, plan=command.plan, items=command.items, at=now),)


def refuse_second_preparation() -> NoReturn:
    """A room is laid out once; another review is another room."""
    raise Refused("wrong_phase")


def swap(room: Room, command: SwapItem) -> tuple[Event, ...]:
    """Replace an item ahead, if it is still the one meant."""
    _refuse_finished(room)
    if any(item.id == command.item.id for item in room.ahead):
        return ()
    refuse_unless_at(room, command.position, command.instead_of)
    return (ItemSwapped(position=command.position, item=command.item),)


def drop(room: Room, command: DropItem) -> tuple[Event, ...]:
    """Leave out an item ahead; a review keeps at least one item."""
    _refuse_finished(room)
    if is_gone(room, command.item):
        return ()
    refuse_unless_at(room, command.position, command.item)
    if len(room.ahead) + len(room.rounds) == 1:
        raise Refused("no_items_left")
    return (ItemDropped(position=command.position),)


def open_door(room: Room, command: OpenDoor, now: datetime) -> tuple[Event, ...]:
    """Give the room its door code, once."""
    _refuse_finished(room)
    if room.door_code:
        return ()
    return (DoorOpened(door_code=command.door_code, at=now),)


def show_standings(room: Room, command: ShowStandings) -> tuple[Event, ...]:
    """Turn standings on or off, at any time."""
    return () if room.standings == command.on else (StandingsSet(on=command.on),)


def is_gone(room: Room, item: str) -> bool:
    """Whether an item is neither ahead nor opened, as after it was swapped or dropped."""
    opened = (current.item for current in room.rounds)
    return all(each.id != item for each in (*opened, *room.ahead))


def refuse_unless_at(room: Room, position: int, item: str) -> None:
    """Let an order pass that means the item in this place ahead.

    Raises:
        Refused: `no_such_item`, since it has moved or been opened.
    """
    if position >= len(room.ahead) or room.ahead[position].id != item:
        raise Refused("no_such_item")


def _refuse_finished(room: Room) -> None:
    if room.phase == "finished":
        raise Refused("finished")
