"""Reviews as rows that are kept for a time and then erased."""

import threading
from datetime import datetime

from sqlalchemy import Engine, delete, select

from quizroom.room.events import SeatEntered
from quizroom.storage.event_codec import read_event
from quizroom.storage.list_tables import listed_reviews
from quizroom.storage.own_tables import picture_rooms
from quizroom.storage.roster_tables import roster_reviews
from quizroom.storage.tables import class_asks, class_choices, class_reviews, events, player_seats, rooms
from quizroom.storage.writing import reading, writing

OF_A_ROOM = (
    player_seats,
    roster_reviews,
    class_choices,
    class_asks,
    class_reviews,
    picture_rooms,
    listed_reviews,
    events,
    rooms,
)


class SqlReviews:
    """`service.player_ports.ReviewStore` over SQLAlchemy Core."""

    def __init__(self, engine: Engine) -> None:
        """Use tables that `database.open_database` has made."""
        self._engine = engine
        self._turn = threading.Lock()

    def finished_before(self, before: datetime) -> tuple[str, ...]:
        """Rooms whose review ended before that, the oldest first."""
        query = select(rooms.c.room).where(rooms.c.finished_at < before).order_by(rooms.c.finished_at)
        with reading(self._engine) as connection:
            return tuple(connection.execute(query).scalars())

    def abandoned_before(self, before: datetime) -> tuple[str, ...]:
        """Rooms in which somebody sat, whose review never ended, and which were laid out before that."""
        query = (
            select(rooms.c.room)
            .where(rooms.c.finished_at.is_(None), rooms.c.prepared_at < before)
            .order_by(rooms.c.prepared_at)
        )
        with reading(self._engine) as connection:
            found = list(connection.execute(query).scalars())
        return tuple(room for room in found if self._somebody_sat_in(room))

    def erase_review(self, room: str) -> None:
        """Erase a room with its log and all that points to it."""
        with writing(self._engine, self._turn) as connection:
            for table in OF_A_ROOM:
                connection.execute(delete(table).where(table.c.room == room))

    def _somebody_sat_in(self, room: str) -> bool:
        query = select(events.c.body).where(events.c.room == room).order_by(events.c.version)
        with reading(self._engine) as connection:
            return any(
                isinstance(read_event(body), SeatEntered) for body in connection.execute(query).scalars()
            )
