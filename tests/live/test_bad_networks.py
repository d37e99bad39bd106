"""Bad networks: nothing is lost or doubled, every screen comes to the same view, and silence cuts no line."""

import sys
import time
from collections.abc import Callable, Iterator
from dataclasses import replace
from datetime import UTC, datetime
from typing import Any

import pytest

from quizroom.marking import marks_of_room
from quizroom.pages.host_entry import COOKIE
from quizroom.protocol.codec import write
from quizroom.settings import Settings
from quizroom.views.own import own_view
from tests.live.bad_line import Weather, line_to
from tests.live.chance import chance
from tests.live.lesson import Lesson, gathered
from tests.live.reference_fold import reference, stored_bodies
from tests.live.silence import CUT_AFTER_S, SilentLines, silence
from tests.live.weathered import ANSWERS_A_ROUND, Weathered, weathered
from tests.live.weathered_screens import WeatheredScreen, looked_at
from tests.serving import Server

PLAYERS = 50
ROUNDS = 3
STORM = Weather(delay_s=0.05, loss=0.04, doubled=0.05, swapped=0.05, half_closed=0.01)


@pytest.fixture(scope="module", autouse=True)
def silent_lines(tmp_path_factory: pytest.TempPathFactory) -> Iterator[SilentLines]:
    """Lines that are silent from the first test of this file until the last ones ask what became of them."""
    with silence(tmp_path_factory.mktemp("silence")) as lines:
        yield lines


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


def test_fifty_players_in_a_storm_lose_nothing_and_all_screens_come_to_the_same_view(
    lesson: Lesson, capsys: pytest.CaptureFixture[str]
) -> None:
    storm = replace(STORM, seed=chance().getrandbits(32))
    with line_to(lesson.server, storm) as line:
        players, wall, desk = everybody(lesson, port=int(line.address.rpartition(":")[2]))
        with weathered(players), looked_at([wall, desk]):
            wait_for(lambda: len(lesson.logged().players) == PLAYERS, "everybody is in")
            for number in range(1, ROUNDS + 1):
                if number == ROUNDS:
                    # nothing tells a page that a view of its own was lost: no network loses one and keeps
                    # the line
                    line.turn(replace(storm, loss=0.0))
                play_round(lesson, players, wall)
            wait_for(lambda: all_see_their_own(lesson, players), "everybody sees their own result")
            wait_for(lambda: without_now(desk.desk) == without_now(lesson.desk()), "the desk shows it all")
        counts = line.counts
    assert [fault for player in players for fault in player.faults] == []
    assert_kept(lesson, players)
    assert min(counts.lost, counts.doubled, counts.swapped, counts.half_closed) > 0
    with capsys.disabled():
        repeats, lines = sum(player.repeats for player in players), sum(player.lines for player in players)
        sys.stdout.write(f"\n{counts}\n{PLAYERS} players: {repeats} repeats, {lines} lines, nothing lost\n")


def everybody(lesson: Lesson, port: int) -> tuple[list[Weathered], WeatheredScreen, WeatheredScreen]:
    """The players, a wall and another desk of the same host, all on the bad line."""
    players = [Weathered(f"player {number}", lesson.door, port) for number in range(PLAYERS)]
    wall = WeatheredScreen(port, {"type": "watch_wall", "door_code": lesson.door})
    at_desk = {"type": "open_desk", "room": lesson.room}
    return players, wall, WeatheredScreen(port, at_desk, cookie=f"{COOKIE}={lesson.cookie}")


def all_see_their_own(lesson: Lesson, players: list[Weathered]) -> bool:
    """Whether each player was last shown what follows from the log for them alone."""
    room, now = lesson.logged(), datetime.now(UTC)
    marks = marks_of_room(room)
    views = ((each.own, write(own_view(room, each.own["player"], marks, now))) for each in players)
    return all(without_now(own) == without_now(view) for own, view in views)


def without_now(view: dict[str, Any]) -> dict[str, Any]:
    """A view but for the time at which it was made."""
    plain = {key: value for key, value in view.items() if key != "now"}
    return plain | {"public": without_now(view["public"])} if "public" in view else plain


def play_round(lesson: Lesson, players: list[Weathered], wall: WeatheredScreen) -> None:
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
    public = without_now(lesson.desk()["public"])
    wait_for(
        lambda: all(without_now(view) == public for view in (wall.public, *(each.seen for each in players))),
        f"everybody sees the record of round {number}",
    )


def assert_kept(lesson: Lesson, players: list[Weathered]) -> None:
    """Each answer is in the log once, in the order in which it was given; marks by a second reading."""
    folded = reference(stored_bodies(lesson.server.database_url, lesson.room))
    for player in players:
        for number, answered in player.answers.items():
            assert folded.said[player.name, number] == answered.sent
    shown = {row["handle"]: (row["marks"], row["of"]) for row in lesson.desk()["roster"]}
    assert shown == folded.marks()


def test_lines_are_kept_awake_more_often_than_proxies_cut_silent_ones() -> None:
    assert Settings().ping_s * 1.4 <= CUT_AFTER_S


def test_a_silent_line_outlives_a_proxy_that_cuts_after_half_a_minute(silent_lines: SilentLines) -> None:
    silent_lines.wait()
    assert [line.is_open() for line in silent_lines.kept] == [True, True]
    assert [line.works() for line in silent_lines.kept] == [True, True]
    assert silent_lines.kept[0].cuts() == 0


def test_the_same_proxy_does_cut_a_line_that_is_kept_awake_too_seldom(silent_lines: SilentLines) -> None:
    silent_lines.wait()
    assert not silent_lines.seldom.is_open()
    assert silent_lines.seldom.cuts() > 0
