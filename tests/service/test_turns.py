"""Many orders at once: one commit for all that have gathered, and an answer for each."""

import threading
from concurrent.futures import Future, ThreadPoolExecutor

import pytest

from quizroom.room.commands import Command
from quizroom.room.refusals import Refused
from quizroom.room.state import Room
from quizroom.service.ports import NotStored
from quizroom.service.rooms import Rooms
from tests.room.samples import preparation, says
from tests.service.fakes import Desk, WatchedLog, seated

PLAYERS = [f"player-{number}" for number in range(40)]
LONG_ENOUGH_S = 0.15
"""For threads to put their orders into the inbox, while the turn before waits for them."""


def ordered_together(log: WatchedLog, *orders: tuple[str, Command]) -> tuple[Rooms, list[Future[Room]]]:
    """Give these orders while a first turn is gathering, so that they come into the next one together."""
    asked = threading.Event()

    def gather() -> None:
        asked.set()
        threading.Event().wait(LONG_ENOUGH_S)

    rooms = Desk(log, gather).rooms
    with ThreadPoolExecutor(len(orders)) as pool:
        given = [pool.submit(rooms.handle, room, command) for room, command in orders]
        assert asked.wait(5)
    return rooms, given


def test_many_answers_at_once_are_few_commits_and_all_are_answered() -> None:
    seated(log := WatchedLog(), players=PLAYERS)
    before = len(log.turns)
    _, given = ordered_together(log, *(("room-1", says(player, "B")) for player in PLAYERS))
    for player, answer in zip(PLAYERS, given, strict=True):
        assert player in answer.result().rounds[0].answers
    assert len(log.turns) - before <= 4
    assert set(Desk(log).rooms.room("room-1").rounds[0].answers) == set(PLAYERS)


def test_one_bad_order_does_not_spoil_the_others_of_its_turn() -> None:
    seated(log := WatchedLog(), players=PLAYERS[:6])
    bad = (
        ("room-1", says("stranger", "B")),
        ("nowhere", says("player-0", "B")),
        ("room-1", says("player-5", "Z")),
    )
    good = [("room-1", says(player, "B")) for player in PLAYERS[:5]]
    _, given = ordered_together(log, *bad, *good)
    assert [type(order.exception()).__name__ for order in given[:3]] == ["Refused", "UnknownRoom", "Refused"]
    assert all(order.exception() is None for order in given[3:])
    assert len(Desk(log).rooms.room("room-1").rounds[0].answers) == 5


def test_a_later_order_of_a_turn_is_decided_on_the_outcome_of_the_earlier_ones() -> None:
    log = WatchedLog()
    _, given = ordered_together(log, *(("new", preparation()) for _ in range(6)))
    outcomes = [order.exception() for order in given]
    assert outcomes.count(None) == 1
    assert all(isinstance(outcome, Refused) for outcome in outcomes if outcome is not None)


def test_rooms_share_a_turn() -> None:
    log = WatchedLog()
    rooms, given = ordered_together(log, *((f"room-{number}", preparation()) for number in range(8)))
    assert len(log.turns) <= 3
    assert len(log.unfinished_rooms()) == 8
    assert sorted(room.id for room in rooms.live()) == sorted(order.result().id for order in given)


def test_if_a_turn_cannot_be_stored_nobody_in_it_is_answered() -> None:
    desk = seated(log := WatchedLog(), players=PLAYERS[:6])
    before = desk.logged()
    log.failure = NotStored("disk full")
    _, given = ordered_together(log, *(("room-1", says(player, "B")) for player in PLAYERS[:6]))
    for order in given:
        with pytest.raises(NotStored):
            order.result()
    assert desk.logged() == before


def test_no_order_is_lost_under_a_storm() -> None:
    desk = seated(WatchedLog(), players=PLAYERS)
    with ThreadPoolExecutor(16) as pool:
        said = [says(player, letter) for letter in "ABCD" for player in PLAYERS]
        orders = [pool.submit(desk.rooms.handle, "room-1", answer) for answer in said]
    assert all(order.exception() is None for order in orders)
    assert desk.rooms.room("room-1") == desk.folded()
    assert len(desk.rooms.room("room-1").rounds[0].answers) == len(PLAYERS)
