"""Players who keep a history: found through the log, erased with all that refers to them."""

from datetime import timedelta
from typing import Any

import pytest
from sqlalchemy import Engine, select

from quizroom.room.events import Event, SeatEntered
from quizroom.room.owner_events import PlayerForgotten, SeatLinked
from quizroom.service.player_ports import KnownPlayer, Seat
from quizroom.storage.event_log import SqlEventLog
from quizroom.storage.players import SqlPlayers
from quizroom.storage.tables import metadata
from tests.room.samples import NOON, after
from tests.storage.entries import entry, laid_out, opened

pytestmark = pytest.mark.parametrize("database", ["SQLite", "PostgreSQL"], indirect=True)

ME, OTHER = "a" * 64, "b" * 64


def entered(seat: str, owner: str, *, seconds: float = 2) -> SeatEntered:
    return SeatEntered(
        player=seat,
        handle=seat.title(),
        key_hash=f"hash of {seat}",
        from_round=1,
        owner=owner,
        at=after(seconds),
    )


@pytest.fixture
def engine(database: Engine | None) -> Engine:
    """A fresh database; of each kind, since this store has no twin in memory."""
    assert database is not None
    return database


@pytest.fixture
def store(engine: Engine) -> SqlPlayers:
    return SqlPlayers(engine)


def filled(engine: Engine, *happened: Event, room: str = "a", at: float = 0) -> SqlEventLog:
    log = SqlEventLog(engine)
    entries = [entry(room, 3 + place, event) for place, event in enumerate(happened)]
    log.append([laid_out(room, at=after(at)), opened(room, "CDFHJ"), *entries])
    return log


def test_a_seat_taken_with_a_key_makes_its_player_known(engine: Engine, store: SqlPlayers) -> None:
    filled(engine, entered("ada", ME), entered("bo", ""), entered("cem", OTHER))
    assert store.seats_of(ME) == (Seat(room="a", player="ada"),)
    assert store.known(ME) == KnownPlayer(player=ME, since=after(2), seen_at=after(2))
    assert store.known("c" * 64) is None


def test_seats_of_later_reviews_come_first_and_the_player_is_seen_again(
    engine: Engine, store: SqlPlayers
) -> None:
    filled(engine, entered("ada", ME), room="a")
    filled(engine, entered("teal", ME, seconds=99), room="b", at=50)
    assert store.seats_of(ME) == (Seat(room="b", player="teal"), Seat(room="a", player="ada"))
    assert store.known(ME) == KnownPlayer(player=ME, since=after(2), seen_at=after(99))


def test_a_seat_can_change_hands_and_belong_to_nobody(engine: Engine, store: SqlPlayers) -> None:
    log = filled(engine, entered("ada", ME))
    log.append([entry("a", 4, SeatLinked(player="ada", owner=OTHER, at=after(3)))])
    assert (store.seats_of(ME), store.seats_of(OTHER)) == ((), (Seat(room="a", player="ada"),))
    log.append([entry("a", 5, SeatLinked(player="ada", owner="", at=after(4)))])
    assert store.seats_of(OTHER) == ()
    assert all(getattr(event, "owner", "") == "" for event in log.read("a"))


def test_who_is_forgotten_leaves_the_log_in_the_same_commit(engine: Engine, store: SqlPlayers) -> None:
    log = filled(engine, entered("ada", ME), entered("bo", OTHER))
    log.append([entry("a", 5, PlayerForgotten(player="ada", handle="Former player 1", at=after(5)))])
    assert store.seats_of(ME) == ()
    assert store.seats_of(OTHER) == (Seat(room="a", player="bo"),)
    seats = [event for event in log.read("a") if isinstance(event, SeatEntered)]
    assert [(seat.handle, seat.key_hash, seat.owner) for seat in seats] == [
        ("Former player 1", "", ""),
        ("Bo", "hash of bo", OTHER),
    ]


def test_erasing_takes_everything_that_refers_to_the_player(engine: Engine, store: SqlPlayers) -> None:
    filled(engine, entered("ada", ME), entered("bo", OTHER))
    store.erase(ME)
    assert store.known(ME) is None
    assert store.seats_of(ME) == ()
    assert store.seats_of(OTHER) != ()
    assert ME not in {value for row in everything(engine) for value in row}


def test_only_who_was_not_seen_for_long_is_listed(engine: Engine, store: SqlPlayers) -> None:
    store.see(ME, NOON)
    store.see(OTHER, NOON + timedelta(days=3))
    assert store.unseen_since(NOON) == ()
    assert store.unseen_since(NOON + timedelta(days=1)) == (ME,)
    store.see(ME, NOON + timedelta(days=2))
    assert store.unseen_since(NOON + timedelta(days=1)) == ()


def everything(engine: Engine) -> list[tuple[Any, ...]]:
    """All rows of all tables."""
    with engine.connect() as connection:
        return [
            tuple(row) for table in metadata.sorted_tables for row in connection.execute(select(table)).all()
        ]
