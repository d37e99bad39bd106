"""What the page of a player alone is made from, put together over a database."""

from functools import partial
from time import sleep

from flask import Blueprint
from sqlalchemy import Engine

from quizroom.knowledge.catalogue import Catalogue
from quizroom.pages.mine_api import Mine, mine_blueprint
from quizroom.pages.running_apart import Apart, one_at_a_time, run_here
from quizroom.pages.take_away import add_take_away
from quizroom.pages.take_away_parts import take_away_over
from quizroom.service.look_flags import LookFlags
from quizroom.service.players import Players
from quizroom.service.ports import Clock, EventLog
from quizroom.service.practice import Practice
from quizroom.service.rooms import Rooms
from quizroom.service.seat_history import SeatHistories
from quizroom.service.second_look import SecondLooks
from quizroom.storage.chance import new_id, new_secret
from quizroom.storage.feeds import SqlFeeds
from quizroom.storage.look_store import SqlLookStore
from quizroom.storage.players import SqlPlayers


def mine_over(engine: Engine, catalogue: Catalogue, *, rooms: Rooms, log: EventLog, clock: Clock) -> Mine:
    """Connect players, their looks and their seats in these rooms."""
    players, looks = Players(store=SqlPlayers(engine)), SqlLookStore(engine)
    second_looks = SecondLooks(
        catalogue=catalogue,
        players=players,
        histories=SeatHistories(rooms=rooms, log=log),
        store=looks,
        clock=clock,
        # In the server sleep is patched, so that this lets others go on; elsewhere it does nothing.
        breathe=partial(sleep, 0),
    )
    return Mine(
        players=players,
        second_looks=second_looks,
        flags=LookFlags(second_looks=second_looks, rooms=rooms),
        practice=Practice(catalogue=catalogue, store=looks, clock=clock, new_id=new_id),
    )


def own_requests(engine: Engine, mine: Mine, address: str, *, run_apart: Apart = run_here) -> Blueprint:
    """All requests of a player's own page: looks, practice, settings, sheet and calendar."""
    routes, in_turn = mine_blueprint(mine), one_at_a_time(run_apart)
    feeds = SqlFeeds(engine)
    add_take_away(
        routes,
        take_away_over(mine, feeds, new_secret=new_secret, address=address, run_apart=in_turn),
    )
    return routes
