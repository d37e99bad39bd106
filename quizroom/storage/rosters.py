"""Class rosters in a relational database."""

import threading
from collections.abc import Sequence
from datetime import datetime
from typing import Any

from sqlalchemy import Engine, Row, delete, func, insert, select

from quizroom.service.roster_ports import Roster, RosterEntry, RosterLine, RosterRow, folded_id
from quizroom.storage.moments import in_utc
from quizroom.storage.roster_tables import roster_entries, roster_reviews, rosters
from quizroom.storage.writing import reading, writing


class SqlRosters:
    """`service.roster_ports.RosterStore` over SQLAlchemy Core."""

    def __init__(self, engine: Engine) -> None:
        """Use tables that `database.open_database` has made."""
        self._engine = engine
        self._turn = threading.Lock()

    def keep(self, roster: Roster) -> None:
        """Keep a roster in place of what was kept under its id."""
        head = {
            "roster": roster.id,
            "host": roster.host,
            "name": roster.name,
            "created_at": roster.created_at,
            "changed_at": roster.changed_at,
        }
        with writing(self._engine, self._turn) as connection:
            for table in (roster_entries, rosters):
                connection.execute(delete(table).where(table.c.roster == roster.id))
            connection.execute(insert(rosters).values(head))
            if roster.entries:
                connection.execute(insert(roster_entries), _entry_rows(roster))

    def rosters_of(self, host: str) -> tuple[RosterLine, ...]:
        """The rosters of a host by name, then by id."""
        people = select(func.count()).where(roster_entries.c.roster == rosters.c.roster).scalar_subquery()
        query = select(rosters, people.label("people")).where(rosters.c.host == host)
        with reading(self._engine) as connection:
            found = connection.execute(query).all()
        lines = (
            RosterLine(
                id=row.roster,
                name=row.name,
                people=row.people,
                created_at=in_utc(row.created_at),
                changed_at=in_utc(row.changed_at),
            )
            for row in found
        )
        # Databases sort names each by rules of their own.
        return tuple(sorted(lines, key=lambda line: (line.name.casefold(), line.id)))

    def find(self, roster: str) -> Roster | None:
        """A roster with its entries."""
        entries = select(roster_entries).where(roster_entries.c.roster == roster)
        with reading(self._engine) as connection:
            head = connection.execute(select(rosters).where(rosters.c.roster == roster)).one_or_none()
            rows = connection.execute(entries.order_by(roster_entries.c.place)).all()
        return None if head is None else _roster(head, rows)

    def entry_of(self, roster: str, institutional_id: str) -> str | None:
        """The opaque id of whoever has this institutional id."""
        query = select(roster_entries.c.entry).where(
            roster_entries.c.roster == roster, roster_entries.c.id_key == folded_id(institutional_id)
        )
        with reading(self._engine) as connection:
            return connection.execute(query).scalar()

    def erase(self, roster: str) -> None:
        """Erase a roster with its entries."""
        with writing(self._engine, self._turn) as connection:
            for table in (roster_entries, rosters):
                connection.execute(delete(table).where(table.c.roster == roster))

    def unused_since(self, before: datetime) -> tuple[str, ...]:
        """Rosters last changed before that, to which no kept review refers."""
        query = (
            select(rosters.c.roster)
            .where(rosters.c.changed_at < before)
            .where(rosters.c.roster.not_in(select(roster_reviews.c.roster)))
            .order_by(rosters.c.roster)
        )
        with reading(self._engine) as connection:
            return tuple(connection.execute(query).scalars())


def _entry_rows(roster: Roster) -> list[dict[str, Any]]:
    return [
        {
            "entry": one.entry,
            "roster": roster.id,
            "place": place,
            "institutional_id": one.row.id,
            "id_key": folded_id(one.row.id),
            "name": one.row.name,
            "section": one.row.section,
        }
        for place, one in enumerate(roster.entries)
    ]


def _roster(head: Row[Any], rows: Sequence[Row[Any]]) -> Roster:
    return Roster(
        id=head.roster,
        host=head.host,
        name=head.name,
        created_at=in_utc(head.created_at),
        changed_at=in_utc(head.changed_at),
        entries=tuple(
            RosterEntry(
                entry=row.entry,
                row=RosterRow(id=row.institutional_id, name=row.name, section=row.section),
            )
            for row in rows
        ),
    )
