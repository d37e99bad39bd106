"""Pictures of hosts' own items in a relational database, and in memory."""

import threading
from collections.abc import Callable
from datetime import datetime

from sqlalchemy import ColumnElement, Engine, and_, delete, func, insert, select

from quizroom.service.own_ports import KeptPicture
from quizroom.storage.moments import in_utc
from quizroom.storage.own_tables import own_items, picture_rooms, pictures
from quizroom.storage.writing import reading, writing


class SqlPictures:
    """`service.own_ports.PictureStore` over SQLAlchemy Core."""

    def __init__(self, engine: Engine) -> None:
        """Use tables that `database.open_database` has made."""
        self._engine = engine
        self._turn = threading.Lock()

    def keep(self, picture: KeptPicture) -> None:
        """Keep a picture."""
        row = {
            "name": picture.name,
            "host": picture.host,
            "made_at": picture.made_at,
            "width": picture.width,
            "height": picture.height,
            "body": picture.body,
        }
        with writing(self._engine, self._turn) as connection:
            connection.execute(insert(pictures).values(row))

    def find(self, name: str) -> KeptPicture | None:
        """The picture with this name."""
        query = select(pictures).where(pictures.c.name == name)
        with reading(self._engine) as connection:
            row = connection.execute(query).one_or_none()
        if row is None:
            return None
        return KeptPicture(
            name=row.name,
            host=row.host,
            made_at=in_utc(row.made_at),
            width=row.width,
            height=row.height,
            body=row.body,
        )

    def count(self, host: str) -> int:
        """How many pictures of a host are kept."""
        query = select(func.count()).select_from(pictures).where(pictures.c.host == host)
        with reading(self._engine) as connection:
            return int(connection.execute(query).scalar_one())

    def sweep(self, before: datetime) -> int:
        """Erase old pictures that are in no item of a library and in no review."""
        with writing(self._engine, self._turn) as connection:
            return connection.execute(delete(pictures).where(_unused(before))).rowcount

    def unused(self, before: datetime) -> int:
        """How many pictures a sweep would erase."""
        query = select(func.count()).select_from(pictures).where(_unused(before))
        with reading(self._engine) as connection:
            return int(connection.execute(query).scalar_one())


def _unused(before: datetime) -> ColumnElement[bool]:
    in_library = select(own_items.c.picture).where(own_items.c.picture.is_not(None))
    return and_(
        pictures.c.made_at < before,
        pictures.c.name.not_in(in_library),
        pictures.c.name.not_in(select(picture_rooms.c.name)),
    )


class MemoryPictures:
    """`service.own_ports.PictureStore` in memory; `in_use` says whether a name is in an item or a review."""

    def __init__(self, in_use: Callable[[str], bool] = lambda _name: False) -> None:
        """Begin with none."""
        self._pictures: dict[str, KeptPicture] = {}
        self._in_use = in_use

    def keep(self, picture: KeptPicture) -> None:
        """Keep a picture."""
        self._pictures[picture.name] = picture

    def find(self, name: str) -> KeptPicture | None:
        """The picture with this name."""
        return self._pictures.get(name)

    def count(self, host: str) -> int:
        """How many pictures of a host are kept."""
        return sum(one.host == host for one in self._pictures.values())

    def sweep(self, before: datetime) -> int:
        """Erase old pictures that are not in use."""
        gone = [one for one in self._pictures.values() if one.made_at < before and not self._in_use(one.name)]
        for one in gone:
            del self._pictures[one.name]
        return len(gone)
