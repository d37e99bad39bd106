"""Players who keep a history, in a relational database."""

import threading
from collections.abc import Iterator, Mapping, Sequence
from datetime import datetime

from sqlalchemy import Column, ColumnElement, Engine, RowMapping, Table, delete, select

from quizroom.service.player_ports import KnownPlayer, Seat
from quizroom.storage.moments import in_utc
from quizroom.storage.schema import metadata
from quizroom.storage.seat_index import see_players
from quizroom.storage.tables import player_seats, players, rooms
from quizroom.storage.writing import reading, writing


class SqlPlayers:
    """`service.player_ports.PlayerStore` over SQLAlchemy Core.

    What belongs to a player is found by the references of the tables: a table that somebody adds later
    is erased and exported without a word here.
    """

    def __init__(self, engine: Engine) -> None:
        """Use tables that `database.open_database` has made."""
        self._engine = engine
        self._turn = threading.Lock()

    def see(self, player: str, at: datetime) -> None:
        """Note that a player is there."""
        with writing(self._engine, self._turn) as connection:
            see_players(connection, [(player, at)])

    def known(self, player: str) -> KnownPlayer | None:
        """What is known of a player."""
        query = select(players.c.since, players.c.seen_at).where(players.c.player == player)
        with reading(self._engine) as connection:
            row = connection.execute(query).one_or_none()
        return (
            None if row is None else KnownPlayer(player=player, since=in_utc(row[0]), seen_at=in_utc(row[1]))
        )

    def seats_of(self, player: str) -> tuple[Seat, ...]:
        """The seats of a player, those of the newest review first."""
        query = (
            select(player_seats.c.room, player_seats.c.seat)
            .join(rooms, rooms.c.room == player_seats.c.room)
            .where(player_seats.c.player == player)
            .order_by(rooms.c.prepared_at.desc(), player_seats.c.room, player_seats.c.seat)
        )
        with reading(self._engine) as connection:
            return tuple(Seat(room=room, player=seat) for room, seat in connection.execute(query))

    def kept_of(self, player: str) -> Mapping[str, Sequence[Mapping[str, object]]]:
        """Rows about a player in all tables but those that say who they are and where they sat."""
        kept: dict[str, Sequence[Mapping[str, object]]] = {}
        with reading(self._engine) as connection:
            for table, about in _tables_about(player):
                if table not in (players, player_seats):
                    found = connection.execute(select(table).where(about)).mappings()
                    kept[str(table.name)] = [_plain(row) for row in found]
        return kept

    def erase(self, player: str) -> None:
        """Erase a player, what refers to others first."""
        with writing(self._engine, self._turn) as connection:
            for table, about in reversed(list(_tables_about(player))):
                connection.execute(delete(table).where(about))

    def unseen_since(self, before: datetime) -> tuple[str, ...]:
        """Players who were last seen before that."""
        query = select(players.c.player).where(players.c.seen_at < before).order_by(players.c.player)
        with reading(self._engine) as connection:
            return tuple(connection.execute(query).scalars())


def _tables_about(player: str) -> Iterator[tuple[Table, ColumnElement[bool]]]:
    """Each table that holds something about players, and which of its rows are about this one."""
    about: dict[Table, ColumnElement[bool]] = {players: players.c.player == player}
    yield players, about[players]
    for table in metadata.sorted_tables:
        for column, referred in _references(table):
            if referred.table in about and referred.table is not table:
                known = select(referred).where(about[referred.table])
                about[table] = column.in_(known)
                yield table, about[table]
                break


def _references(table: Table) -> Iterator[tuple[Column[object], Column[object]]]:
    for key in table.foreign_keys:
        yield key.parent, key.column


def _plain(row: RowMapping) -> dict[str, object]:
    return {str(name): value for name, value in row.items() if name != "player"}
