"""Hosts' own items in a relational database, and in memory."""

import threading
from typing import Any

from sqlalchemy import Engine, delete, insert, select

from quizroom.service.own_ports import KeptItem
from quizroom.storage.moments import in_utc
from quizroom.storage.own_item_codec import read_own_item, write_own_item
from quizroom.storage.own_tables import own_items
from quizroom.storage.writing import reading, writing


class SqlOwnItems:
    """`service.own_ports.OwnItemStore` over SQLAlchemy Core."""

    def __init__(self, engine: Engine) -> None:
        """Use tables that `database.open_database` has made."""
        self._engine = engine
        self._turn = threading.Lock()

    def keep(self, kept: KeptItem) -> None:
        """Keep an item, in place of what was kept under its id before."""
        row = {
            "item": kept.id,
            "host": kept.host,
            "changed_at": kept.changed_at,
            "picture": None if kept.own.picture is None else kept.own.picture.name,
            "body": write_own_item(kept.own),
        }
        with writing(self._engine, self._turn) as connection:
            connection.execute(delete(own_items).where(own_items.c.item == kept.id))
            connection.execute(insert(own_items).values(row))

    def find(self, host: str, item: str) -> KeptItem | None:
        """An item of this host."""
        found = self._found(own_items.c.host == host, own_items.c.item == item)
        return found[0] if found else None

    def of_host(self, host: str) -> tuple[KeptItem, ...]:
        """All items of a host, the one changed last first."""
        return self._found(own_items.c.host == host)

    def drop(self, host: str, item: str) -> None:
        """Take an item out of the library."""
        which = (own_items.c.host == host) & (own_items.c.item == item)
        with writing(self._engine, self._turn) as connection:
            connection.execute(delete(own_items).where(which))

    def _found(self, *which: Any) -> tuple[KeptItem, ...]:
        query = select(own_items).where(*which).order_by(own_items.c.changed_at.desc(), own_items.c.item)
        with reading(self._engine) as connection:
            rows = connection.execute(query).all()
        return tuple(
            KeptItem(
                id=row.item,
                host=row.host,
                changed_at=in_utc(row.changed_at),
                own=read_own_item(row.body),
            )
            for row in rows
        )


class MemoryOwnItems:
    """`service.own_ports.OwnItemStore` in a dictionary."""

    def __init__(self) -> None:
        """Begin with none."""
        self._items: dict[str, KeptItem] = {}

    def keep(self, kept: KeptItem) -> None:
        """Keep an item."""
        self._items[kept.id] = kept

    def find(self, host: str, item: str) -> KeptItem | None:
        """An item of this host."""
        found = self._items.get(item)
        return found if found is not None and found.host == host else None

    def of_host(self, host: str) -> tuple[KeptItem, ...]:
        """All items of a host, the one changed last first."""
        mine = sorted((one for one in self._items.values() if one.host == host), key=lambda one: one.id)
        return tuple(sorted(mine, key=lambda one: one.changed_at, reverse=True))

    def drop(self, host: str, item: str) -> None:
        """Take an item out of the library."""
        if self.find(host, item) is not None:
            del self._items[item]

    def pictures(self) -> frozenset[str]:
        """The names of all pictures that are in an item."""
        return frozenset(one.own.picture.name for one in self._items.values() if one.own.picture)
