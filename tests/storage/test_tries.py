"""Tries under one contract: counted by a process for itself, or by all workers together in a real Redis."""

import signal
from collections.abc import Iterator

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from quizroom.realtime.door import UNKNOWN_IDS, WRONG_DOORS, Credits, Guesses
from quizroom.service.passwords import FOR_ONE, IN_ALL, PasswordTries
from quizroom.service.tries import Limit, OwnTries, Tries
from quizroom.storage.redis_tries import LEFT_ALONE_S, PREFIX, RedisTries
from tests.services import Redis

NOW = 1_000_000.0
FEW = Limit(name="few", most=3.0, a_second=0.5)
MORE = Limit(name="more", most=5.0, a_second=0.25)
STEPS = st.lists(
    st.tuples(
        st.sampled_from(("few", "more", "both", "look", "give back", "forgive")),
        st.integers(-2, 3),
        st.booleans(),
    ),
    max_size=25,
)


@pytest.fixture
def workers(redis: Redis) -> Iterator[list[RedisTries]]:
    """Two workers with one Redis."""
    made = [RedisTries(redis.url, OwnTries()) for _ in range(2)]
    yield made
    for each in made:
        each.close()


@pytest.fixture(params=["own", "Redis"])
def tries(request: pytest.FixtureRequest) -> Tries:
    """Each way of counting."""
    shared: list[RedisTries] = request.getfixturevalue("workers") if request.param == "Redis" else []
    return shared[0] if shared else OwnTries()


def taken(tries: Tries, limit: Limit, now: float = NOW, times: int = 8) -> int:
    return sum(tries.take((limit,), now) for _ in range(times))


def test_so_many_at_once_and_then_they_come_back_with_time(tries: Tries) -> None:
    assert taken(tries, FEW) == 3
    assert not tries.are_left(FEW, NOW + 1.9)
    assert tries.are_left(FEW, NOW + 2)
    assert taken(tries, FEW, NOW + 2) == 1
    assert taken(tries, FEW, NOW + 1000) == 3
    assert taken(tries, MORE) == 5


def test_looking_takes_nothing(tries: Tries) -> None:
    assert all(tries.are_left(FEW, NOW) for _ in range(20))
    assert taken(tries, FEW) == 3


def test_where_one_limit_is_used_up_none_is_taken(tries: Tries) -> None:
    taken(tries, FEW)
    assert not any(tries.take((MORE, FEW), NOW) for _ in range(20))
    assert taken(tries, MORE) == 5


def test_what_is_given_back_may_be_tried_again_and_never_more(tries: Tries) -> None:
    taken(tries, FEW)
    tries.give_back(FEW, NOW)
    assert taken(tries, FEW) == 1
    tries.forgive(FEW, NOW)
    tries.give_back(FEW, NOW)
    assert taken(tries, FEW) == 3


def test_a_clock_that_is_behind_gives_nothing_away(tries: Tries) -> None:
    taken(tries, FEW, NOW)
    assert not tries.take((FEW,), NOW - 100)
    assert not tries.are_left(FEW, NOW + 1)


@settings(max_examples=40, suppress_health_check=[HealthCheck.function_scoped_fixture], deadline=None)
@given(STEPS)
def test_two_workers_together_grant_what_one_process_would(
    workers: list[RedisTries], steps: list[tuple[str, int, bool]]
) -> None:
    alone, now = OwnTries(), NOW
    for worker in workers:
        worker.forgive(FEW, now)
        worker.forgive(MORE, now)
    for step, gap, other in steps:
        now += gap
        assert done(workers[other], step, now) == done(alone, step, now), (step, now)


def done(tries: Tries, step: str, now: float) -> bool | None:
    match step:
        case "look":
            return tries.are_left(FEW, now)
        case "give back":
            tries.give_back(FEW, now)
            return None
        case "forgive":
            tries.forgive(FEW, now)
            return None
        case _:
            return tries.take({"few": (FEW,), "more": (MORE,), "both": (FEW, MORE)}[step], now)


def test_workers_share_the_wrong_codes_and_passwords(workers: list[RedisTries]) -> None:
    passwords = [PasswordTries(tries=tries) for tries in workers]
    assert sum(passwords[number % 2].take("sorrel", NOW) for number in range(30)) == FOR_ONE
    passwords[0].give_back("sorrel", NOW)
    assert passwords[1].take("sorrel", NOW)
    for limit in (WRONG_DOORS, UNKNOWN_IDS):
        doors = [Guesses(limit=limit, tries=tries) for tries in workers]
        guesser = Credits(left=0.0, at=0.0)
        assert sum(doors[number % 2].was_wrong(guesser, NOW) for number in range(700)) == limit.most
        assert not any(door.may_try(NOW) for door in doors)


def test_while_redis_is_away_each_worker_counts_for_itself_and_then_together_again(
    redis: Redis, caplog: pytest.LogCaptureFixture
) -> None:
    steady = [0.0]
    workers = [RedisTries(redis.url, OwnTries(), steady=lambda: steady[0]) for _ in range(2)]
    assert taken(workers[0], FEW) == 3
    redis.stop()
    assert [taken(worker, FEW) for worker in workers] == [3, 3]
    assert [worker.are_left(FEW, NOW) for worker in workers] == [False, False]
    redis.start()
    assert not workers[0].take((FEW,), NOW)  # it is left alone for a moment
    steady[0] += LEFT_ALONE_S
    assert [taken(worker, FEW) for worker in workers] == [3, 0]
    told = [record.message for record in caplog.records if record.name.endswith("redis_tries")]
    assert len([line for line in told if "counts for itself" in line]) == 2


def test_what_is_counted_in_redis_names_nobody_and_goes_by_itself(
    redis: Redis, workers: list[RedisTries]
) -> None:
    from redis import Redis as Client  # noqa: PLC0415 - an extra that may be missing

    PasswordTries(tries=workers[0]).take("dr. m. sorrel", NOW)
    taken(workers[0], WRONG_DOORS)
    with Client.from_url(redis.url, decode_responses=True) as reader:
        keys = sorted(reader.keys())
        assert len(keys) == 3
        assert all(key.startswith(PREFIX) and "sorrel" not in key for key in keys)
        lives = {key.removeprefix(PREFIX).partition(".")[0]: reader.ttl(key) for key in keys}
    # as long as until all tries have come back, and a second more
    assert lives["password"] == pytest.approx(300, abs=2)
    assert lives[IN_ALL.name] == pytest.approx(1, abs=2)
    assert lives[WRONG_DOORS.name] == pytest.approx(8 / 5, abs=2)
    assert min(lives.values()) >= 0


@pytest.mark.parametrize("how", ["wants a password", "holds something else", "is silent"])
def test_a_redis_that_refuses_or_hangs_is_as_one_that_is_away(redis: Redis, how: str) -> None:
    from redis import Redis as Client  # noqa: PLC0415 - likewise

    assert redis.process is not None
    with Client.from_url(redis.url) as client:
        match how:
            case "wants a password":
                client.config_set("requirepass", "another")
            case "holds something else":
                client.set(f"{PREFIX}few", "no tries")
            case _:
                redis.process.send_signal(signal.SIGSTOP)
    assert taken(RedisTries(redis.url, OwnTries()), FEW) == 3
