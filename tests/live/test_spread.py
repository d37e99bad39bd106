"""What two workers over one PostgreSQL and one Redis count together, and a talk whose players are spread
over both.
"""

import json
import time
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor

import pytest

from quizroom.realtime.door import WRONG_DOORS, Credits, Guesses
from quizroom.service.hosts import TOO_MANY, WRONG
from quizroom.service.passwords import FOR_ONE
from quizroom.service.tries import OwnTries
from quizroom.storage.redis_tries import RedisTries
from tests import services, serving
from tests.live.forms import wrong_sign_in
from tests.live.lesson import Lesson, gathered
from tests.live.test_talk import told_nothing, watchers
from tests.live.voices import Voice
from tests.serving import Server

SPREAD = ("ada", "bo", "cem", "dua")


@pytest.fixture(scope="module")
def redis_here() -> Iterator[services.Redis]:
    """A Redis that nobody ends."""
    started = services.new_redis() or pytest.skip(services.NO_REDIS)
    yield started
    started.stop()


@pytest.fixture(scope="module")
def workers(
    postgresql: services.PostgreSql,
    redis_here: services.Redis,
    tmp_path_factory: pytest.TempPathFactory,
) -> Iterator[list[Server]]:
    """Two workers that live as long as this file."""
    base = tmp_path_factory.mktemp("spread")
    settings = {"QUIZROOM_DATABASE_URL": postgresql.new_database(), "QUIZROOM_FANOUT_URL": redis_here.url}
    with ThreadPoolExecutor(2) as both:
        made = list(both.map(lambda which: serving.start(base / which, settings=settings), ("one", "other")))
    yield made
    for worker in made:
        worker.stop()


@pytest.fixture
def lesson(workers: list[Server]) -> Iterator[Lesson]:
    """Host, wall, Ada and Bo on the first worker, Cem and Dua on the second."""
    lesson = gathered(
        workers[0], SPREAD[:2], families=["nerve"], timing="fixed", seconds=600, holds_results=True
    )
    lesson.server = workers[1]
    for player in SPREAD[2:]:
        lesson.enter(player)
    yield lesson
    lesson.hang_up()


def test_who_guesses_at_two_workers_has_no_more_passwords_than_at_one(workers: list[Server]) -> None:
    told = [wrong_sign_in(workers[number % 2], "Dr. M. Sorrel") for number in range(int(FOR_ONE) + 2)]
    assert [WRONG in page for page in told] == [True] * int(FOR_ONE) + [False, False]
    assert all(TOO_MANY in page for page in told[-2:])


def test_codes_guessed_at_one_worker_are_counted_by_the_other(
    workers: list[Server], redis_here: services.Redis
) -> None:
    lines = [Voice(worker) for worker in workers for _ in range(2)]
    third = RedisTries(redis_here.url, OwnTries())
    elsewhere = Guesses(limit=WRONG_DOORS, tries=third)
    begun, said = time.time(), list[str]()
    for line in lines * 5:
        while elsewhere.was_wrong(Credits(left=0.0, at=0.0), time.time()):
            pass
        said.append(line.say("watch_wall", door_code="YYYYY")["code"])
    third.forgive(WRONG_DOORS, time.time())  # the next class comes to the same workers
    third.close()
    assert said.count("unknown_door") <= (time.time() - begun) * WRONG_DOORS.a_second
    assert "slow_down" in said
    for line in lines:
        line.hang_up()


def key_of(lesson: Lesson) -> list[str]:
    return [option["letter"] for option in lesson.item()["options"] if option["is_key"]]


def test_a_talk_over_two_workers_tells_nothing_before_its_time_and_the_same_to_all(lesson: Lesson) -> None:
    lesson.open_next()
    for player in SPREAD:
        lesson.answer(player, wrong=player != "ada")
    lesson.step("close_round")
    lesson.step("let_talk", seconds=90)
    lesson.step("open_again")
    for player in ("bo", "cem"):
        lesson.seats[player].done("submit_answer", round=1, choice=key_of(lesson), again=True)
    # a first answer that comes late over the other worker is not taken for a second one
    late = lesson.seats["dua"].say("submit_answer", round=1, choice=key_of(lesson))
    assert late["result"] == "refused"
    lesson.step("close_again")
    for voice in watchers(lesson):
        voice.last("public", lambda public: public["version"] >= lesson.seen["public"]["version"])
    told_nothing(lesson)
    lesson.step("show_result")
    shown = [voice.last("public", lambda public: public["result"]) for voice in watchers(lesson)]
    assert len({json.dumps(view["second"], sort_keys=True) for view in shown}) == 1
    second = shown[0]["second"]
    assert (second["first_right"], second["right"], second["answered"]) == (1, 2, 2)
    for player, verdicts in {
        "bo": ("wrong", "right", 0),
        "cem": ("wrong", "right", 0),
        "dua": ("wrong", None, 0),
    }.items():
        own = lesson.seats[player].last("own", lambda seen: seen["result"])
        assert (own["result"]["verdict"], own["result"]["second"], own["marks"]) == verdicts
    logged = lesson.logged()
    second_answers = logged.rounds[0].second_answers
    assert {logged.players[player].handle for player in second_answers} == {"Bo", "Cem"}
