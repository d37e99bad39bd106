"""The list of reviews in a relational database."""

import threading
from collections.abc import Sequence
from datetime import datetime
from typing import Any

from sqlalchemy import Connection, Engine, Row, insert, select, update

from quizroom.room.events import ReviewPrepared
from quizroom.service.review_list import ListedReview
from quizroom.storage.list_tables import listed_reviews
from quizroom.storage.moments import in_utc
from quizroom.storage.tables import rooms
from quizroom.storage.writing import reading, writing

LONGEST = 200


class SqlReviewShelf:
    """`service.review_list.ReviewShelf` over SQLAlchemy Core."""

    def __init__(self, engine: Engine) -> None:
        """Use tables that `database.open_database` has made."""
        self._engine = engine
        self._turn = threading.Lock()

    def of_host(self, host: str) -> Sequence[ListedReview]:
        """All reviews of a host, newest first."""
        query = (
            select(listed_reviews, rooms.c.prepared_at, rooms.c.door_code, rooms.c.finished_at)
            .join(rooms, rooms.c.room == listed_reviews.c.room)
            .where(rooms.c.host == host)
            .order_by(rooms.c.prepared_at.desc(), rooms.c.room.desc())
        )
        with reading(self._engine) as connection:
            return [_listed(row) for row in connection.execute(query)]

    def plan(self, room: str, at: datetime | None, *, opens_itself: bool) -> None:
        """Note when a review is planned, or that it is not."""
        self._note(room, planned_at=at, opens_itself=opens_itself)

    def archive(self, room: str, at: datetime | None) -> None:
        """Put a review away, or take it out again."""
        self._note(room, archived_at=at)

    def doors_due(self, after: datetime, until: datetime) -> tuple[str, ...]:
        """Reviews whose door is shut and is to open by itself, planned in that time and not put away."""
        query = (
            select(listed_reviews.c.room)
            .join(rooms, rooms.c.room == listed_reviews.c.room)
            .where(
                listed_reviews.c.planned_at > after,
                listed_reviews.c.planned_at <= until,
                listed_reviews.c.opens_itself,
                listed_reviews.c.archived_at.is_(None),
                rooms.c.door_code.is_(None),
                rooms.c.finished_at.is_(None),
            )
            .order_by(listed_reviews.c.planned_at, listed_reviews.c.room)
        )
        with reading(self._engine) as connection:
            return tuple(connection.execute(query).scalars())

    def _note(self, room: str, **noted: Any) -> None:
        with writing(self._engine, self._turn) as connection:
            connection.execute(update(listed_reviews).where(listed_reviews.c.room == room).values(noted))


def index_prepared(connection: Connection, event: ReviewPrepared) -> None:
    """Put a host's review on the list."""
    if event.host:
        row = {
            "room": event.room,
            "title": event.plan.title[:LONGEST],
            "course": event.plan.course_title[:LONGEST],
            "rounds": len(event.items),
            "opens_itself": False,
        }
        connection.execute(insert(listed_reviews).values(row))


def index_title(connection: Connection, room: str, title: str) -> None:
    """Let the list follow a new title."""
    titled = update(listed_reviews).where(listed_reviews.c.room == room).values(title=title[:LONGEST])
    connection.execute(titled)


def _listed(row: Row[Any]) -> ListedReview:
    return ListedReview(
        room=row.room,
        title=row.title,
        course=row.course,
        rounds=row.rounds,
        prepared_at=in_utc(row.prepared_at),
        door_opened=bool(row.door_code),
        finished_at=_moment(row.finished_at),
        planned_at=_moment(row.planned_at),
        opens_itself=row.opens_itself,
        archived_at=_moment(row.archived_at),
    )


def _moment(at: datetime | None) -> datetime | None:
    return None if at is None else in_utc(at)
