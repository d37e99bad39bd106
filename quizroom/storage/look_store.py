"""Second looks in a relational database (SQLite by default)."""

import threading
from collections.abc import Iterable, Sequence
from datetime import datetime
from typing import Any

from sqlalchemy import Connection, Engine, RowMapping, delete, func, insert, select

from quizroom.second_look.asked import AskedLook, GivenAnswer, LookSet, Wishes
from quizroom.storage.look_codec import read_answer, read_look, write_answer, write_look
from quizroom.storage.look_tables import look_answers, look_sets, looks, plan_settings
from quizroom.storage.moments import in_utc
from quizroom.storage.writing import reading, writing

_AT_ONCE = 200
"""Ids in one query; databases limit the number of parameters."""


class SqlLookStore:
    """`service.look_ports.LookStore` over SQLAlchemy Core."""

    def __init__(self, engine: Engine) -> None:
        """Use tables that `database.open_database` has made."""
        self._engine = engine
        self._turn = threading.Lock()

    def add_looks(self, looks: Sequence[AskedLook]) -> None:
        """Keep looks; those whose id is known stay. Raises `NotStored`."""
        with writing(self._engine, self._turn) as connection:
            _add_looks(connection, looks)

    def looks(self, player: str, ids: Iterable[str]) -> dict[str, AskedLook]:
        """Those of the looks that are this player's."""
        wanted = tuple(dict.fromkeys(ids))
        found: list[AskedLook] = []
        for start in range(0, len(wanted), _AT_ONCE):
            some = looks.c.id.in_(wanted[start : start + _AT_ONCE])
            found += map(read_look, self._column(select(looks.c.body).where(looks.c.player == player, some)))
        return {look.id: look for look in found}

    def looks_of_set(self, player: str, set_id: str) -> tuple[AskedLook, ...]:
        """The looks of a set, in order."""
        query = select(looks.c.body).where(looks.c.player == player, looks.c.set_id == set_id)
        return tuple(map(read_look, self._column(query.order_by(looks.c.place, looks.c.id))))

    def add_answers(self, player: str, answers: Sequence[GivenAnswer]) -> None:
        """Keep the first answer to each look of this player. Raises `NotStored`."""
        first = {answer.look: answer for answer in reversed(answers)}
        with writing(self._engine, self._turn) as connection:
            own = select(looks.c.id).where(looks.c.player == player, looks.c.id.in_(first))
            known = select(look_answers.c.look).where(look_answers.c.look.in_(first))
            fresh = set(connection.execute(own).scalars()) - set(connection.execute(known).scalars())
            rows = [
                {
                    "look": answer.look,
                    "player": player,
                    "body": write_answer(answer),
                    "received_at": answer.received_at,
                }
                for answer in first.values()
                if answer.look in fresh
            ]
            if rows:
                connection.execute(insert(look_answers), rows)

    def answers_of(self, player: str) -> dict[str, GivenAnswer]:
        """All answers of a player, by look."""
        query = select(look_answers.c.body).where(look_answers.c.player == player)
        return {answer.look: answer for answer in map(read_answer, self._column(query))}

    def add_set(self, made: LookSet, looks: Sequence[AskedLook]) -> None:
        """Keep a set with its looks; a known set stays. Raises `NotStored`."""
        with writing(self._engine, self._turn) as connection:
            if _set_row(connection, made.player, made.id) is None:
                connection.execute(insert(look_sets).values(**_row_of_set(made)))
                _add_looks(connection, looks)

    def find_set(self, player: str, set_id: str) -> LookSet | None:
        """A set of this player."""
        with reading(self._engine) as connection:
            row = _set_row(connection, player, set_id)
        return None if row is None else LookSet(**{**row, "made_at": in_utc(row["made_at"])})

    def sets_since(self, player: str, since: datetime) -> int:
        """How many sets the player has made from a time on."""
        query = select(func.count()).where(look_sets.c.player == player, look_sets.c.made_at >= since)
        return int(self._column(query)[0])

    def wishes(self, player: str) -> Wishes | None:
        """The player's wishes."""
        columns = [column for column in plan_settings.c if column.name != "player"]
        with reading(self._engine) as connection:
            query = select(*columns).where(plan_settings.c.player == player)
            row = connection.execute(query).mappings().first()
        return None if row is None else Wishes(**row)

    def set_wishes(self, player: str, wishes: Wishes) -> None:
        """Keep the wishes. Raises `NotStored`."""
        with writing(self._engine, self._turn) as connection:
            connection.execute(delete(plan_settings).where(plan_settings.c.player == player))
            connection.execute(
                insert(plan_settings).values(
                    player=player,
                    course=wishes.course,
                    exam_date=wishes.exam_date,
                    minutes_a_day=wishes.minutes_a_day,
                    time_zone=wishes.time_zone,
                )
            )

    def all_looks(self, player: str) -> tuple[AskedLook, ...]:
        """Everything that was asked of a player, oldest first."""
        query = select(looks.c.body).where(looks.c.player == player)
        return tuple(map(read_look, self._column(query.order_by(looks.c.made_at, looks.c.place, looks.c.id))))

    def _column(self, query: Any) -> list[Any]:
        with reading(self._engine) as connection:
            return list(connection.execute(query).scalars())


def _add_looks(connection: Connection, made: Sequence[AskedLook]) -> None:
    by_id = {look.id: look for look in reversed(made)}
    known = set(connection.execute(select(looks.c.id).where(looks.c.id.in_(by_id))).scalars())
    rows = [
        {
            "id": look.id,
            "player": look.player,
            "set_id": look.set,
            "place": look.place,
            "made_at": look.made_at,
            "body": write_look(look),
        }
        for look in by_id.values()
        if look.id not in known
    ]
    if rows:
        connection.execute(insert(looks), rows)


def _set_row(connection: Connection, player: str, set_id: str) -> RowMapping | None:
    query = select(look_sets).where(look_sets.c.player == player, look_sets.c.id == set_id)
    return connection.execute(query).mappings().first()


def _row_of_set(made: LookSet) -> dict[str, Any]:
    return {
        "player": made.player,
        "id": made.id,
        "kind": made.kind,
        "title": made.title,
        "course": made.course,
        "seconds": made.seconds,
        "made_at": made.made_at,
    }
