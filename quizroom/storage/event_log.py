"""The event log in a relational database (SQLite by default)."""

import threading
from collections.abc import Collection, Sequence
from typing import Any

from sqlalchemy import Connection, Engine, bindparam, delete, func, insert, select, update
from sqlalchemy.exc import IntegrityError

from quizroom.room.credit_events import RosterSet
from quizroom.room.events import AnswerAccepted, DoorOpened, Event, ReviewEnded, ReviewPrepared
from quizroom.room.host_events import ReviewHandedOver, ReviewRenamed
from quizroom.service.ports import Entry, VersionTaken
from quizroom.storage.event_codec import read_event, write_event
from quizroom.storage.own_tables import picture_rooms
from quizroom.storage.picture_index import index_pictures
from quizroom.storage.review_shelf import index_prepared, index_title
from quizroom.storage.roster_tables import roster_reviews
from quizroom.storage.seat_index import index_owners
from quizroom.storage.tables import events, rooms
from quizroom.storage.writing import reading, writing

ROOM_OF_DOOR = (
    select(rooms.c.room)
    .where(rooms.c.door_code == bindparam("code"))
    .order_by(rooms.c.finished_at.is_not(None), rooms.c.prepared_at.desc())
    .limit(1)
)
"""Asked at every entrance, so it is put together once."""


class SqlEventLog:
    """`service.ports.EventLog` over SQLAlchemy Core."""

    def __init__(self, engine: Engine) -> None:
        """Use tables that `database.open_database` has made."""
        self._engine = engine
        self._turn = threading.Lock()
        # Said in the driver's own words: with thousands of answers in a second SQLAlchemy's way of naming
        # the values of each row would cost as much as writing them.
        self._adding = str(insert(events).compile(dialect=engine.dialect))
        self._row = _row_by_place if engine.dialect.positional else _row_by_name

    def append(self, entries: Sequence[Entry]) -> None:
        """Commit all entries or none. Raises `VersionTaken`, `NotStored`."""
        if not entries:
            return
        rows = [self._row(entry.room, entry.version, write_event(entry.event)) for entry in entries]
        with writing(self._engine, self._turn) as connection:
            try:
                connection.exec_driver_sql(self._adding, rows)
                # Answers are in no index, and by far the most of all that happens.
                rare = [entry for entry in entries if not isinstance(entry.event, AnswerAccepted)]
                for entry in rare:
                    _index(connection, entry)
                index_owners(connection, rare)
                index_pictures(connection, rare)
            except IntegrityError as error:
                raise VersionTaken(tuple(sorted({entry.room for entry in entries}))) from error

    def read(self, room: str, after: int = 0, most: int | None = None) -> tuple[Event, ...]:
        """The events of a room above a version, in order; no more than `most`."""
        query = (
            select(events.c.body)
            .where(events.c.room == room, events.c.version > after)
            .order_by(events.c.version)
            .limit(most)
        )
        return tuple(read_event(body) for body in self._column(query))

    def room_of_door(self, door_code: str) -> str | None:
        """The room with this code: an unfinished one before finished ones, the newest first."""
        with reading(self._engine) as connection:
            return connection.execute(ROOM_OF_DOOR, {"code": door_code}).scalar()

    def rooms_of_host(self, host: str) -> tuple[str, ...]:
        """All rooms of a host, newest first."""
        query = select(rooms.c.room).where(rooms.c.host == host).order_by(rooms.c.prepared_at.desc())
        return tuple(self._column(query))

    def rooms_of_roster(self, roster: str) -> tuple[str, ...]:
        """All rooms whose review is for credit by this roster, oldest first."""
        query = (
            select(rooms.c.room)
            .join(roster_reviews, roster_reviews.c.room == rooms.c.room)
            .where(roster_reviews.c.roster == roster)
            .order_by(rooms.c.prepared_at, rooms.c.room)
        )
        return tuple(self._column(query))

    def unfinished_rooms(self) -> tuple[str, ...]:
        """All rooms whose review has not ended, oldest first."""
        query = select(rooms.c.room).where(rooms.c.finished_at.is_(None)).order_by(rooms.c.prepared_at)
        return tuple(self._column(query))

    def rooms_with_picture(self, name: str) -> tuple[str, ...]:
        """All rooms in whose items this picture is or was."""
        query = (
            select(picture_rooms.c.room).where(picture_rooms.c.name == name).order_by(picture_rooms.c.room)
        )
        return tuple(self._column(query))

    def versions(self, of: Collection[str]) -> dict[str, int]:
        """The newest version of each of these rooms that is there."""
        # The newest of one room is the last of its part of the primary key; a GROUP BY would read all of
        # them.
        newest = select(func.max(events.c.version)).where(events.c.room == rooms.c.room).scalar_subquery()
        query = select(rooms.c.room, newest).where(rooms.c.room.in_(of))
        with reading(self._engine) as connection:
            return {room: version for room, version in connection.execute(query).all() if version is not None}

    def _column(self, query: Any) -> list[Any]:
        with reading(self._engine) as connection:
            return list(connection.execute(query).scalars())


def _row_by_place(room: str, version: int, body: bytes) -> Any:
    return (room, version, body)


def _row_by_name(room: str, version: int, body: bytes) -> Any:
    return {"room": room, "version": version, "body": body}


def _index(connection: Connection, entry: Entry) -> None:
    match entry.event:
        case ReviewPrepared() as event:
            row = {"room": entry.room, "host": event.host, "prepared_at": event.at}
            connection.execute(insert(rooms).values(row))
            index_prepared(connection, event)
            _index_roster(connection, entry.room, event.plan.roster)
        case RosterSet() as event:
            _index_roster(connection, entry.room, event.roster)
        case DoorOpened() as event:
            connection.execute(
                update(rooms).where(rooms.c.room == entry.room).values(door_code=event.door_code)
            )
        case ReviewEnded() as event:
            connection.execute(update(rooms).where(rooms.c.room == entry.room).values(finished_at=event.at))
        case ReviewRenamed() as event:
            index_title(connection, entry.room, event.title)
        case ReviewHandedOver() as event:
            connection.execute(update(rooms).where(rooms.c.room == entry.room).values(host=event.host))
        case _:
            pass


def _index_roster(connection: Connection, room: str, roster: str) -> None:
    connection.execute(delete(roster_reviews).where(roster_reviews.c.room == room))
    if roster:
        connection.execute(insert(roster_reviews).values(room=room, roster=roster))
