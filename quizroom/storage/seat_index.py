"""The index of whose history a seat belongs to, kept in step with the log in the same transaction."""

from collections.abc import Sequence
from datetime import datetime

from sqlalchemy import Connection, Table, bindparam, delete, select, update
from sqlalchemy.dialects import postgresql, sqlite

from quizroom.room.events import SeatEntered
from quizroom.room.owner_events import OwnerEvent, PlayerForgotten, SeatLinked
from quizroom.room.owners import redacted
from quizroom.service.ports import Entry
from quizroom.storage.event_codec import read_event, write_event
from quizroom.storage.tables import events, player_seats, players


def index_owners(connection: Connection, entries: Sequence[Entry]) -> None:
    """Note whose history seats belong to, and take out of the log what is to be forgotten."""
    linked: list[tuple[str, str, str, datetime]] = []
    for entry in entries:
        match entry.event:
            case SeatEntered(owner=owner, at=datetime() as at) if owner:
                linked.append((entry.room, entry.event.player, owner, at))
            case SeatLinked() as event:
                _unlink(connection, entry.room, event.player)
                if event.owner:
                    linked.append((entry.room, event.player, event.owner, event.at))
                else:
                    _redact(connection, entry, event)
            case PlayerForgotten() as event:
                _unlink(connection, entry.room, event.player)
                _redact(connection, entry, event)
            case _:
                pass
    _link(connection, linked)


def see_players(connection: Connection, seen: Sequence[tuple[str, datetime]]) -> None:
    """Note that these players are there, for the first time or again."""
    rows = [{"player": player, "since": at, "seen_at": at} for player, at in seen]
    add = _insert(connection, players)
    fresh = add.on_conflict_do_update(index_elements=["player"], set_={"seen_at": add.excluded.seen_at})
    connection.execute(fresh, rows)


def _link(connection: Connection, linked: Sequence[tuple[str, str, str, datetime]]) -> None:
    if not linked:
        return
    see_players(connection, [(owner, at) for _, _, owner, at in linked])
    rows = [{"room": room, "seat": seat, "player": owner} for room, seat, owner, _ in linked]
    connection.execute(_insert(connection, player_seats).on_conflict_do_nothing(), rows)


def _unlink(connection: Connection, room: str, seat: str) -> None:
    connection.execute(delete(player_seats).where(player_seats.c.room == room, player_seats.c.seat == seat))


def _redact(connection: Connection, entry: Entry, deed: OwnerEvent) -> None:
    query = (
        select(events.c.version, events.c.body)
        .where(events.c.room == entry.room, events.c.version < entry.version)
        .order_by(events.c.version)
    )
    stored = [(version, read_event(body)) for version, body in connection.execute(query)]
    known = [event for _, event in stored]
    changed = [
        {"of_room": entry.room, "of_version": version, "new_body": write_event(new)}
        for (version, old), new in zip(stored, redacted(known, deed), strict=True)
        if new is not old
    ]
    if changed:
        place = (events.c.room == bindparam("of_room")) & (events.c.version == bindparam("of_version"))
        connection.execute(update(events).where(place).values(body=bindparam("new_body")), changed)


def _insert(connection: Connection, table: Table) -> sqlite.Insert | postgresql.Insert:
    # "On conflict" is said alike in both, but each dialect has its own word for it.
    if connection.dialect.name == "postgresql":
        return postgresql.insert(table)
    return sqlite.insert(table)
