"""kill -9 at a hundred random moments over each store, while two rooms are played: nothing acknowledged is
lost, and the class goes on by itself.
"""

import sys
import time
from collections.abc import Iterator
from pathlib import Path
from random import Random
from statistics import median, quantiles

import pytest

from quizroom.pages.host_entry import COOKIE
from quizroom.storage.addresses import embedded_database, usable_database_url
from tests.live.chance import chance
from tests.live.kept import assert_kept, played
from tests.live.killable import Killable, killable_over
from tests.live.reference_fold import reference, stored_bodies
from tests.live.steadfast import SteadfastRoom
from tests.live.voices import host_cookie
from tests.services import wait_until

KILLS = 100
KILLS_A_ROUND = 3
ROOMS = 2
PLAYERS = 4
GOES_ON_WITHIN_S = 3.0
"""From when its process begins, which has all loaded already, until the last of the class goes on: at 95 of
a hundred starts, lest one moment of a machine that runs other tests beside it decide.
"""
WHILE_STARTING, WHILE_COMING_BACK = 0.15, 0.3
"""Of all kills so many hit a server that is not ready yet, and so many (the rest up to this share) a class
that is coming back; all others a class that answers."""


@pytest.fixture(params=["SQLite", "PostgreSQL"])
def store(request: pytest.FixtureRequest, tmp_path: Path) -> str:
    """The address of an empty database of each kind."""
    if request.param == "SQLite":
        return embedded_database(tmp_path)
    return usable_database_url(request.getfixturevalue("postgresql").new_database())


@pytest.fixture
def killable(store: str, tmp_path: Path) -> Iterator[Killable]:
    with killable_over(store, tmp_path) as server:
        yield server


def test_what_was_acknowledged_is_there_once_after_any_kill(
    killable: Killable, store: str, capsys: pytest.CaptureFixture[str]
) -> None:
    dice = chance()
    rooms = laid_out(killable)
    with played(rooms):
        away = killed_again_and_again(killable, rooms, dice)
    assert faults_of(rooms) == []
    count = sum(assert_kept(room, reference(stored_bodies(store, room.room))) for room in rooms)
    for room in rooms:
        room.leave()
    tell(capsys, store, count, away)
    assert count > 3 * KILLS
    assert quantiles(away, n=20)[-1] < GOES_ON_WITHIN_S


def tell(capsys: pytest.CaptureFixture[str], store: str, count: int, away: list[float]) -> None:
    lines = (
        f"{store.partition(':')[0]}: {KILLS} kills, {count} answers acknowledged, none lost or doubled;",
        f"after {len(away)} starts all were back in their seats and all rooms had gone on",
        f"{max(away):.2f} s after it began at most, {median(away):.2f} s typically",
    )
    with capsys.disabled():
        sys.stdout.write("\n" + "\n".join(lines) + "\n")


def laid_out(killable: Killable) -> list[SteadfastRoom]:
    link = f"http://127.0.0.1:{killable.port}/desk/enter/{killable.key}"
    cookie = f"{COOKIE}={host_cookie(link)}"
    rooms = [SteadfastRoom(f"room {number}", lambda: killable.port, cookie) for number in range(ROOMS)]
    for room in rooms:
        room.lay_out(PLAYERS)
    return rooms


def faults_of(rooms: list[SteadfastRoom]) -> list[str]:
    return [fault for room in rooms for fault in room.faults]


def killed_again_and_again(killable: Killable, rooms: list[SteadfastRoom], dice: Random) -> list[float]:
    """Kill at random moments; seconds from each start that was let be until the whole class went on."""
    away = []
    until_all_go_on(killable, rooms)
    for number in range(1, KILLS + 1):
        if number % KILLS_A_ROUND == 0:
            for room in rooms:
                room.turns.release()
        time.sleep(dice.uniform(0.0, 0.3))
        killable.kill()
        when = dice.random()
        if when < WHILE_STARTING and number < KILLS:
            killable.begin()
            continue
        killable.start()
        if when >= WHILE_COMING_BACK or number == KILLS:
            away.append(until_all_go_on(killable, rooms))
    return away


def until_all_go_on(killable: Killable, rooms: list[SteadfastRoom]) -> float:
    """Wait until every player is back in a seat and each room has something acknowledged again."""
    wait_until(
        lambda: faults_of(rooms) != [] or min(room.goes_on_since() for room in rooms) > killable.begun_at,
        "the class",
    )
    assert faults_of(rooms) == []
    return time.monotonic() - killable.begun_at
