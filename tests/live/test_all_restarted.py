"""Two workers, PostgreSQL and Redis are killed and started again, one after the other, while a room is played
whose players are spread over both workers: nothing acknowledged is lost, and all screens come to the same
view.
"""

import signal
import sys
import time
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path
from random import Random
from typing import Any

import pytest

from quizroom.pages.host_entry import COOKIE
from tests.live.chance import chance
from tests.live.kept import assert_kept, played
from tests.live.reference_fold import reference, stored_bodies
from tests.live.steadfast import SteadfastRoom
from tests.live.thin_line import ThinLine
from tests.live.voices import host_cookie
from tests.live.weathered_screens import WeatheredScreen, looked_at
from tests.live.workers import Pair, pair_over, wait_for
from tests.services import PostgreSql, Redis
from tests.serving import StartServer

PLAYERS = 8
TIMES_EACH = 2


@dataclass
class Deployment:
    """All that may be killed, and the room that must not notice."""

    pair: Pair
    postgresql: PostgreSql
    redis: Redis
    room: SteadfastRoom
    dice: Random

    def goes_on(self) -> None:
        """Wait until everybody has something acknowledged that they did after this."""
        now = time.monotonic()
        wait_for(lambda: min(each.went_on_at for each in self.room.players) > now)

    def lose_a_worker(self) -> None:
        """One of the two is killed; its players are served by the other, and later by both."""
        which = self.dice.randrange(2)
        self.pair.workers[which].kill()
        self.goes_on()
        self.pair.restart(which)

    def lose_redis(self) -> None:
        """Redis is away for longer than a worker that has to start without it."""
        self.redis.stop()
        self.goes_on()
        self.lose_a_worker()
        self.goes_on()
        self.redis.start()

    def lose_postgresql(self) -> None:
        """PostgreSQL ends as in a crash, and has to recover."""
        self.postgresql.stop(signal.SIGQUIT)
        time.sleep(self.dice.uniform(0.0, 1.0))
        self.postgresql.start()


@pytest.fixture
def deployment(
    start_server: StartServer, postgresql: PostgreSql, redis: Redis, tmp_path: Path
) -> Iterator[Deployment]:
    pair, dice = pair_over(postgresql, redis, start_server, tmp_path), chance()

    def any_worker() -> int:
        return pair.workers[dice.randrange(2)].port

    cookie = f"{COOKIE}={host_cookie(pair.workers[0].desk_link)}"
    room = SteadfastRoom("the room", any_worker, cookie)
    room.lay_out(PLAYERS)
    yield Deployment(pair, postgresql, redis, room, dice)
    room.leave()


def test_nothing_is_lost_whatever_is_killed_and_all_screens_agree_in_the_end(
    deployment: Deployment, capsys: pytest.CaptureFixture[str]
) -> None:
    room, screens = deployment.room, watchers(deployment)
    with looked_at(screens):
        with played([room]):
            strike(deployment)
        # the round that is still open is the last one
        room.order("end", {"type": "end_review", "round": room.round})
        public = plain(seen_by_host(deployment, 0)["public"])
        wait_for(lambda: all(plain(screen.public) == public for screen in screens))
    assert room.faults == []
    assert public["phase"] == "finished"
    assert plain(seen_by_host(deployment, 1)) == plain(seen_by_host(deployment, 0))
    store = deployment.pair.workers[0].database_url
    count = assert_kept(room, reference(stored_bodies(store, room.room)))
    with capsys.disabled():
        sys.stdout.write(f"\n{count} answers acknowledged over two workers, none lost or doubled\n")


def strike(deployment: Deployment) -> None:
    """Kill everything in turn, in an order of chance, in rounds that are open."""
    blows: list[Callable[[], None]] = [
        deployment.lose_a_worker,
        deployment.lose_redis,
        deployment.lose_postgresql,
    ] * TIMES_EACH
    deployment.dice.shuffle(blows)
    for blow in blows:
        deployment.goes_on()
        time.sleep(deployment.dice.uniform(0.0, 0.3))
        blow()
        deployment.goes_on()
        deployment.room.turns.release()


def watchers(deployment: Deployment) -> list[WeatheredScreen]:
    """A wall at each worker, and a second desk."""
    ports = [worker.port for worker in deployment.pair.workers]
    at_wall = {"type": "watch_wall", "door_code": deployment.room.door}
    at_desk = {"type": "open_desk", "room": deployment.room.room}
    walls = [WeatheredScreen(port, at_wall) for port in ports]
    return [*walls, WeatheredScreen(ports[1], at_desk, cookie=deployment.room.cookie)]


def seen_by_host(deployment: Deployment, which: int) -> dict[str, Any]:
    """The desk as this worker shows it."""
    line = ThinLine(deployment.pair.workers[which].port, deployment.room.cookie)
    reply = line.ask({"id": "desk", "type": "open_desk", "room": deployment.room.room})
    line.hang_up()
    desk: dict[str, Any] = reply["desk"]
    return desk


def plain(view: dict[str, Any]) -> dict[str, Any]:
    """A view but for the time at which it was made."""
    rest = {key: value for key, value in view.items() if key != "now"}
    return rest | {"public": plain(view["public"])} if "public" in view else rest
