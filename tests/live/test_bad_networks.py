"""Bad networks: nothing is lost or doubled, every page comes to the same view, and silence cuts no line."""

import sys
import threading
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import replace
from typing import Any

import pytest
import socketio

from quizroom.settings import Settings
from tests.live.bad_line import BadLine, Weather
from tests.live.lesson import Lesson, gathered
from tests.live.reference_fold import reference
from tests.live.test_durability import bodies
from tests.live.voices import Voice
from tests.live.weathered import ANSWERS_A_ROUND, Weathered
from tests.serving import Server, StartServer

PLAYERS = 50
ROUNDS = 3
STORM = Weather(delay_s=0.05, loss=0.04, doubled=0.05, swapped=0.05, half_closed=0.01)
PROXIES_CUT_AFTER_S = 30.0
"""What many proxies allow at least (common practice, no source; nginx's proxy_read_timeout is 60 s)."""


@contextmanager
def line_to(server: Server, weather: Weather) -> Iterator[BadLine]:
    line = BadLine(server.port, weather)
    try:
        yield line
    finally:
        line.close()


def wait_for(holds: Callable[[], bool], what: str, seconds: float = 60.0) -> None:
    deadline = time.monotonic() + seconds
    while not holds():
        assert time.monotonic() < deadline, f"it never came that {what}"
        time.sleep(0.2)


@pytest.fixture
def lesson(server: Server) -> Iterator[Lesson]:
    """A room without players, its host on a good line."""
    lesson = gathered(server, [], families=["nerve"], rounds=ROUNDS)
    yield lesson
    lesson.hang_up()


def test_fifty_players_in_a_storm_lose_nothing_and_come_to_the_same_view(
    lesson: Lesson, capsys: pytest.CaptureFixture[str]
) -> None:
    with line_to(lesson.server, STORM) as line:
        port = int(line.address.rpartition(":")[2])
        players = [Weathered(f"player {number}", lesson.door, port) for number in range(PLAYERS)]
        threads = [threading.Thread(target=player.play) for player in players]
        for thread in threads:
            thread.start()
        wait_for(lambda: len(lesson.logged().players) == PLAYERS, "everybody is in")
        for _ in range(ROUNDS):
            play_round(lesson, players)
        for player in players:
            player.over.set()
        for thread in threads:
            thread.join(30)
        counts = line.counts
    assert [fault for player in players for fault in player.faults] == []
    assert_kept(lesson, players)
    assert min(counts.lost, counts.doubled, counts.swapped, counts.half_closed) > 0
    with capsys.disabled():
        repeats, lines = sum(player.repeats for player in players), sum(player.lines for player in players)
        sys.stdout.write(f"\n{counts}\n{PLAYERS} players: {repeats} repeats, {lines} lines, nothing lost\n")


def play_round(lesson: Lesson, players: list[Weathered]) -> None:
    lesson.open_next()
    number = lesson.round
    wait_for(
        lambda: all(
            number in each.answers and each.answers[number].done == ANSWERS_A_ROUND for each in players
        ),
        f"everybody has answered round {number}",
    )
    lesson.step("close_round")
    lesson.step("show_record")
    public = {key: value for key, value in lesson.desk()["public"].items() if key != "now"}
    wait_for(
        lambda: all({**each.seen, "now": 0} == {**public, "now": 0} for each in players),
        f"everybody sees the record of round {number}",
    )


def assert_kept(lesson: Lesson, players: list[Weathered]) -> None:
    """Each answer is in the log once, in the order in which it was given; marks by a second reading."""
    folded = reference(bodies(lesson.server.database_url, lesson.room))
    for player in players:
        for number, answered in player.answers.items():
            assert folded.said[player.name, number] == answered.sent
    shown = {row["handle"]: (row["marks"], row["of"]) for row in lesson.desk()["roster"]}
    assert shown == folded.marks()


def test_lines_are_kept_awake_more_often_than_proxies_cut_silent_ones() -> None:
    assert Settings().ping_s * 1.4 <= PROXIES_CUT_AFTER_S


def test_a_silent_line_outlives_a_proxy_that_waits_for_one_and_a_half_pings(
    start_server: StartServer,
) -> None:
    server = start_server(settings={"QUIZROOM_PING_S": "1"})
    with line_to(server, Weather(idle_s=1.5)) as line:
        voice = Voice(replace(server, address=line.address))
        time.sleep(5)  # this test is about time passing
        assert voice.is_connected()
        assert line.counts.idle_cuts == 0
        voice.done("probe_time")
        voice.hang_up()


def test_the_same_proxy_does_cut_a_line_that_is_kept_awake_too_seldom(server: Server) -> None:
    with line_to(server, Weather(idle_s=1.5)) as line:
        voice = Voice(replace(server, address=line.address))
        wait_for(lambda: not voice.is_connected(), "the line is cut")
        assert line.counts.idle_cuts > 0
        voice.hang_up()


def test_where_websockets_are_blocked_long_polling_carries_a_review(server: Server) -> None:
    lesson = gathered(server, ["ada"], families=["nerve"])
    lesson.open_next()
    with line_to(server, Weather(blocks_websockets=True)) as line:
        with pytest.raises(socketio.exceptions.ConnectionError):
            Voice(replace(server, address=line.address))
        polling = socketio.Client(reconnection=False)
        heard: list[dict[str, Any]] = []
        polling.on("public", heard.append)
        polling.connect(line.address, wait_timeout=30)
        assert polling.transport() == "polling"
        seat = {
            "type": "enter_seat",
            "door_code": lesson.door,
            "handle": "Bo",
            "seat_key": "secret key of bo",
        }
        assert polling.call("say", {"id": "1", **seat})["result"] == "done"
        answer = {"id": "2", "type": "submit_answer", "round": 1, "choice": ["A"]}
        assert polling.call("say", answer)["result"] == "done"
        lesson.step("close_round")
        wait_for(lambda: any(view["phase"] == "closed" for view in heard), "the round is seen to be closed")
        assert line.counts.refused > 0
        polling.disconnect()
    lesson.hang_up()


def test_a_server_told_to_take_websockets_alone_refuses_long_polling(start_server: StartServer) -> None:
    server = start_server(settings={"QUIZROOM_TRANSPORTS": "websocket"})
    with pytest.raises(socketio.exceptions.ConnectionError):
        socketio.Client(reconnection=False).connect(server.address, transports=["polling"], wait_timeout=30)
    Voice(server).hang_up()
