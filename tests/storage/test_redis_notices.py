"""Notices over a real Redis, and what is said while it is away."""

import threading
import time
from collections.abc import Callable, Iterator

import pytest

from quizroom.storage.redis_notices import RedisNotices
from tests.services import Redis


class Listener:
    """A worker's end: what it has heard, and how often it had to look by itself."""

    def __init__(self, url: str) -> None:
        """Run both loops at once."""
        self.heard: list[tuple[str, int]] = []
        self.looks = 0
        self.notices = RedisNotices(url)
        loops = self.notices.loops(lambda room, version: self.heard.append((room, version)), self._look)
        self._threads = [threading.Thread(target=loop) for loop in loops]
        for thread in self._threads:
            thread.start()

    def end(self) -> None:
        """Let both loops end."""
        self.notices.end()
        for thread in self._threads:
            thread.join(10)

    def _look(self) -> None:
        self.looks += 1


def wait_for(holds: Callable[[], bool]) -> None:
    deadline = time.monotonic() + 20
    while not holds():
        assert time.monotonic() < deadline
        time.sleep(0.01)


@pytest.fixture
def pair(redis: Redis) -> Iterator[tuple[Listener, Listener]]:
    one, other = Listener(redis.url), Listener(redis.url)
    wait_for(lambda: one.notices.fault() == other.notices.fault() == "")
    yield one, other
    one.end()
    other.end()


def test_what_one_publishes_the_other_hears(pair: tuple[Listener, Listener]) -> None:
    one, other = pair
    one.notices.publish("room-1", 7)
    wait_for(lambda: ("room-1", 7) in other.heard)
    assert one.heard == []


def test_several_notices_of_a_room_may_become_one_but_the_newest_is_heard(
    pair: tuple[Listener, Listener],
) -> None:
    one, other = pair
    for version in range(1, 101):
        one.notices.publish("room-1", version)
    wait_for(lambda: ("room-1", 100) in other.heard)
    assert [version for _, version in other.heard] == sorted(version for _, version in other.heard)


def test_while_redis_is_away_it_is_said_and_afterwards_everybody_is_told_to_look(
    pair: tuple[Listener, Listener], redis: Redis
) -> None:
    one, other = pair
    redis.stop()
    wait_for(lambda: "Redis does not answer" in one.notices.fault())
    begun = time.monotonic()
    one.notices.publish("room-1", 8)
    assert time.monotonic() - begun < 0.1  # nobody waits for it
    redis.start()
    wait_for(lambda: one.notices.fault() == other.notices.fault() == "")
    assert (one.looks, other.looks) == (2, 2)
    one.notices.publish("room-1", 9)
    wait_for(lambda: ("room-1", 9) in other.heard)


def test_what_is_no_notice_of_ours_does_not_end_the_listening(
    pair: tuple[Listener, Listener], redis: Redis
) -> None:
    from redis import Redis as Client  # noqa: PLC0415 - an extra that may be missing

    one, other = pair
    with Client.from_url(redis.url) as stranger:
        stranger.publish("quizroom.notices", "a stranger\nnonsense")
    wait_for(lambda: other.looks == 2)
    one.notices.publish("room-1", 9)
    wait_for(lambda: ("room-1", 9) in other.heard)
