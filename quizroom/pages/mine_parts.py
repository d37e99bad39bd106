"""What the page of a player alone is made from, put together over a database."""

from sqlalchemy import Engine

from quizroom.knowledge.catalogue import Catalogue
from quizroom.pages.mine_api import Mine
from quizroom.service.players import Players
from quizroom.service.ports import Clock, EventLog
from quizroom.service.practice import Practice
from quizroom.service.rooms import Rooms
from quizroom.service.seat_history import SeatHistories
from quizroom.service.second_look import SecondLooks
from quizroom.storage.chance import new_id
from quizroom.storage.look_store import SqlLookStore
from quizroom.storage.players import SqlPlayers


def mine_over(engine: Engine, catalogue: Catalogue, *, rooms: Rooms, log: EventLog, clock: Clock) -> Mine:
    """Connect players, their looks and their seats in these rooms."""
    players, looks = Players(store=SqlPlayers(engine)), SqlLookStore(engine)
    return Mine(
        players=players,
        second_looks=SecondLooks(
            catalogue=catalogue,
            players=players,
            histories=SeatHistories(rooms=rooms, log=log),
            store=looks,
            clock=clock,
        ),
        practice=Practice(catalogue=catalogue, store=looks, clock=clock, new_id=new_id),
    )
