"""The index of the reviews in which a picture is, kept in step with the log in the same transaction."""

from collections.abc import Iterator, Sequence

from sqlalchemy import Connection
from sqlalchemy.dialects import postgresql, sqlite

from quizroom.questions.model import Item
from quizroom.room.adding import ItemAdded
from quizroom.room.events import Event, ItemSwapped, ReviewPrepared
from quizroom.service.ports import Entry
from quizroom.storage.own_tables import picture_rooms


def index_pictures(connection: Connection, entries: Sequence[Entry]) -> None:
    """Note which pictures came into which review."""
    found = {(name, entry.room) for entry in entries for name in pictures_in(entry.event)}
    if found:
        rows = [{"name": name, "room": room} for name, room in sorted(found)]
        # "On conflict" is said alike in both, but each dialect has its own word for it.
        dialect = postgresql if connection.dialect.name == "postgresql" else sqlite
        connection.execute(dialect.insert(picture_rooms).on_conflict_do_nothing(), rows)


def pictures_in(event: Event) -> Iterator[str]:
    """The names of the pictures of the items that an event brings in."""
    for item in _items(event):
        if item.picture is not None:
            yield item.picture.name


def _items(event: Event) -> tuple[Item, ...]:
    match event:
        case ReviewPrepared():
            return event.items
        case ItemSwapped() | ItemAdded():
            return (event.item,)
        case _:
            return ()
