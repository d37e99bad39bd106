"""What classes chose, in a relational database."""

import threading
from collections.abc import Sequence
from typing import Any

from sqlalchemy import Connection, Engine, Select, delete, func, insert, or_, select

from quizroom.questions.experience import AskCount
from quizroom.storage.tables import class_asks, class_choices, class_reviews, events, rooms
from quizroom.storage.writing import reading, writing


class SqlClassChoices:
    """`service.class_ports.ClassChoices` over SQLAlchemy Core."""

    def __init__(self, engine: Engine) -> None:
        """Use tables that `database.open_database` has made."""
        self._engine = engine
        self._turn = threading.Lock()

    def replace(self, room: str, *, course: str, version: int, counts: Sequence[AskCount]) -> None:
        """Keep the counts of a review; older ones never replace newer ones."""
        known = select(class_reviews.c.version).where(class_reviews.c.room == room)
        with writing(self._engine, self._turn) as connection:
            if (connection.execute(known).scalar() or 0) > version:
                return
            _forget(connection, room)
            connection.execute(insert(class_reviews).values(room=room, course=course, version=version))
            if counts:
                connection.execute(insert(class_asks), [_ask_row(room, one) for one in counts])
            chosen = [row for one in counts for row in _choice_rows(room, one)]
            if chosen:
                connection.execute(insert(class_choices), chosen)

    def forget(self, room: str) -> None:
        """Remove the counts of a review."""
        with writing(self._engine, self._turn) as connection:
            _forget(connection, room)

    def behind(self) -> tuple[str, ...]:
        """Finished reviews that were not counted, or whose log has grown since."""
        written = select(func.max(events.c.version)).where(events.c.room == rooms.c.room).scalar_subquery()
        query = (
            select(rooms.c.room)
            .outerjoin(class_reviews, class_reviews.c.room == rooms.c.room)
            .where(rooms.c.finished_at.is_not(None))
            .where(or_(class_reviews.c.version.is_(None), class_reviews.c.version < written))
            .order_by(rooms.c.finished_at, rooms.c.room)
        )
        with reading(self._engine) as connection:
            return tuple(connection.execute(query).scalars())

    def counts(self, course: str | None = None) -> tuple[AskCount, ...]:
        """All counts of a course list, or of all, summed and sorted."""
        asked, chosen = class_asks.c, class_choices.c
        asks = select(asked.ask, asked.typed, func.sum(asked.answered), func.sum(asked.right))
        choices = select(chosen.ask, chosen.typed, chosen.concept, func.sum(chosen.chosen))
        wrong: dict[tuple[str, bool], dict[str, int]] = {}
        with reading(self._engine) as connection:
            for ask, typed, concept, people in connection.execute(_grouped(choices, chosen, course)):
                wrong.setdefault((ask, typed), {})[concept] = int(people)
            found = connection.execute(_grouped(asks, asked, course)).all()
        counts = (
            AskCount(
                ask=ask,
                typed=typed,
                answered=int(answered),
                right=int(right),
                wrong=wrong.get((ask, typed), {}),
            )
            for ask, typed, answered, right in found
        )
        return tuple(sorted(counts, key=lambda one: (one.ask, one.typed)))

    def counted(self) -> tuple[tuple[str, int], ...]:
        """The reviews that are summed up, with the versions their counts were made from."""
        review = class_reviews.c
        query = select(review.room, review.version).join(rooms, rooms.c.room == review.room)
        with reading(self._engine) as connection:
            return tuple(sorted((room, version) for room, version in connection.execute(query)))


def _grouped(query: Select[Any], columns: Any, course: str | None) -> Select[Any]:
    """Summed over the reviews that are still there, by question, way of answering, and what was chosen."""
    by = [column for column in columns if column.name in ("ask", "typed", "concept")]
    # An erased review counts no more, even before its counts are removed.
    query = query.join(class_reviews, class_reviews.c.room == columns.room).join(
        rooms, rooms.c.room == columns.room
    )
    if course is not None:
        query = query.where(class_reviews.c.course == course)
    return query.group_by(*by).order_by(*by)


def _forget(connection: Connection, room: str) -> None:
    for table in (class_choices, class_asks, class_reviews):
        connection.execute(delete(table).where(table.c.room == room))


def _ask_row(room: str, one: AskCount) -> dict[str, Any]:
    return {"room": room, "ask": one.ask, "typed": one.typed, "answered": one.answered, "right": one.right}


def _choice_rows(room: str, one: AskCount) -> list[dict[str, Any]]:
    return [
        {"room": room, "ask": one.ask, "typed": one.typed, "concept": concept, "chosen": people}
        for concept, people in one.wrong.items()
    ]
