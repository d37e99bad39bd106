"""Two workers over one PostgreSQL and one Redis; the players of one room are spread over both."""

import time
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest

from quizroom.realtime.alarms import WATCH_S
from quizroom.views.moment import milliseconds
from tests.live.lesson import Lesson, gathered, marks_by_handle
from tests.live.voices import Voice, host_voice
from tests.live.workers import Pair, pair_over, remarks, wait_for
from tests.services import PostgreSql, Redis
from tests.serving import Server, StartServer

PLAYERS = ("ada", "bo", "cem", "dua")


@pytest.fixture
def pair(start_server: StartServer, postgresql: PostgreSql, redis: Redis, tmp_path: Path) -> Pair:
    return pair_over(postgresql, redis, start_server, tmp_path)


@pytest.fixture
def lesson(pair: Pair) -> Iterator[Lesson]:
    """Host, wall, Ada and Bo on the first worker, Cem and Dua on the second; the first round is open."""
    lesson = gathered(pair.workers[0], PLAYERS[:2], families=["nerve"], timing="fixed", seconds=600)
    lesson.server = pair.workers[1]
    for player in PLAYERS[2:]:
        lesson.enter(player)
    lesson.server = pair.workers[0]
    lesson.open_next()
    yield lesson
    lesson.hang_up()


def comes_back(lesson: Lesson, player: str, worker: Server) -> None:
    """A player's browser finds another worker."""
    lesson.seats[player] = Voice(worker)
    lesson.seats[player].done("resume_seat", door_code=lesson.door, seat_key=f"secret key of {player}")


def all_see(lesson: Lesson, **wanted: Any) -> None:
    """Every seat, the wall and the desk come to the same view."""
    voices = [*lesson.seats.values(), *([lesson.wall] if lesson.wall else [])]

    def agreed() -> bool:
        publics = [voice.done("show_view")["public"] for voice in voices] + [lesson.desk()["public"]]
        plain = [{key: value for key, value in public.items() if key != "now"} for public in publics]
        return all(view == plain[0] for view in plain) and wanted.items() <= plain[0].items()

    wait_for(agreed)


def assert_kept(lesson: Lesson) -> None:
    room = lesson.logged()
    kept = {
        (room.players[player].handle.lower(), current.number): list(answer.choice)
        for current in room.rounds
        for player, answer in current.answers.items()
    }
    assert kept == {who: said["choice"] for who, said in lesson.said.items()}


def test_what_one_worker_commits_is_told_by_the_other_within_a_moment(lesson: Lesson) -> None:
    lesson.answer("cem")
    lesson.wall.last("tally", lambda tally: tally["answered"] == 1)  # type: ignore[union-attr]  # there is a wall
    begun = time.monotonic()
    lesson.step("close_round")
    view = lesson.seats["dua"].last("public", lambda public: public["phase"] == "closed")
    assert time.monotonic() - begun < 2.0
    assert view["round"] == 1
    lesson.seats["cem"].last("own", lambda own: own["result"] and own["result"]["verdict"] == "right")
    all_see(lesson, phase="closed")


def test_an_answer_over_the_other_worker_is_taken_at_once_after_opening(lesson: Lesson) -> None:
    for _ in range(2):
        lesson.step("close_round")
        lesson.step("show_record")
        lesson.open_next()
        for player in reversed(PLAYERS):
            lesson.answer(player, wrong=player == "bo")
    assert_kept(lesson)


@pytest.mark.parametrize("end", [Server.kill, Server.stop], ids=["killed", "told to end"])
def test_a_worker_that_ends_costs_nothing_that_was_acknowledged(
    lesson: Lesson, pair: Pair, end: Callable[[Server], None]
) -> None:
    for player in PLAYERS:
        lesson.answer(player)
    before = lesson.desk()["public"]["clock"]["closes_at"]
    end(pair.workers[0])
    lesson.hang_up()
    other = pair.workers[1]
    lesson.host = host_voice(other, lesson.cookie)
    lesson.host.done("open_desk", room=lesson.room)
    lesson.wall = Voice(other)
    lesson.wall.done("watch_wall", door_code=lesson.door)
    for player in PLAYERS:
        comes_back(lesson, player, other)
    assert_kept(lesson)
    lesson.answer("bo", wrong=True)
    pair.restart(0)
    comes_back(lesson, "ada", pair.workers[0])
    lesson.answer("ada", wrong=True)
    lesson.step("close_round")
    all_see(lesson, phase="closed")
    assert_kept(lesson)
    # the other worker was alive all the time, so no time was lost
    current = lesson.logged().rounds[0]
    assert current.closes_at is not None
    assert milliseconds(current.closes_at) == before
    assert {row["handle"]: (row["marks"], row["of"]) for row in lesson.desk()["roster"]} == marks_by_handle(
        lesson.logged()
    )


def test_without_redis_all_goes_on_and_health_says_so(lesson: Lesson, pair: Pair, redis: Redis) -> None:
    redis.stop()
    wait_for(lambda: all(remarks(worker) != [] for worker in pair.workers))
    for player in PLAYERS:
        lesson.answer(player)
    lesson.step("close_round")
    lesson.seats["cem"].last("public", lambda public: public["phase"] == "closed")
    all_see(lesson, phase="closed")
    redis.start()
    wait_for(lambda: all(remarks(worker) == [] for worker in pair.workers))
    lesson.step("show_record")
    begun = time.monotonic()
    lesson.open_next()
    lesson.seats["cem"].last("public", lambda public: public["round"] == 2)
    assert time.monotonic() - begun < 2.0
    assert_kept(lesson)


def test_while_postgresql_is_away_nothing_is_acknowledged_and_afterwards_all_goes_on(
    lesson: Lesson, postgresql: PostgreSql
) -> None:
    for player in PLAYERS:
        lesson.answer(player)
    postgresql.stop()
    for player in ("ada", "dua"):
        reply = lesson.seats[player].say("submit_answer", round=1, choice=["A"])
        assert (reply["result"], reply["code"]) == ("failed", "not_stored")
    postgresql.start()
    assert_kept(lesson)
    for player in PLAYERS:
        lesson.answer(player, wrong=True)
    lesson.step("close_round")
    all_see(lesson, phase="closed")
    assert_kept(lesson)


def test_a_round_that_nobody_is_left_to_close_is_closed_by_whoever_is_alive(pair: Pair) -> None:
    # until then each may take itself for alone, and would have woken the room for another reason
    time.sleep(WATCH_S + 1.0)
    lesson = gathered(pair.workers[0], ["ada"], families=["nerve"], timing="fixed", seconds=5)
    lesson.open_next()
    pair.workers[0].kill()
    lesson.hang_up()
    lesson.server = pair.workers[1]
    wait_for(lambda: lesson.logged().phase == "closed", 60)


def test_links_cookies_doors_and_repeated_orders_hold_for_both(pair: Pair) -> None:
    one, other = pair.workers
    lesson = gathered(one, ["ada"])
    there = host_voice(other, lesson.cookie)
    order = {"id": "the same order", "type": "prepare_review", "title": "", "course": "arm_and_forearm"}
    rest = {"families": ["nerve"], "rounds": 3, "timing": "untimed", "typed": False, "standings": False}
    laid_out = [voice.say_raw({**order, **rest, "seed": 3}) for voice in (lesson.host, there)]
    assert laid_out[0]["desk"]["room"] == laid_out[1]["desk"]["room"]
    comes_back(lesson, "ada", other)
    voice = Voice(other)
    reply = voice.say("enter_seat", door_code=lesson.door, handle="ADA", seat_key="x")
    assert reply["code"] == "handle_taken"
    for each in (there, voice):
        each.hang_up()
    lesson.hang_up()
