"""kill -9 in any phase: after the next start the room is where it was and nothing acknowledged is lost."""

from collections.abc import Callable
from typing import Any

import pytest

from tests.live.lesson import PLAYERS, Lesson, gathered, marks_by_handle
from tests.live.phases import PHASES, answering, explained
from tests.live.voices import host_cookie, host_voice
from tests.serving import Server, StartServer


@pytest.mark.parametrize("phase", PHASES, ids=lambda phase: phase.__name__)
def test_after_a_kill_the_room_is_where_it_was(
    phase: Callable[[Server], Lesson], server: Server, start_server: StartServer
) -> None:
    lesson = phase(server)
    before = lesson.desk()
    lesson.restart(start_server)
    after = lesson.desk()
    assert steady(after) == steady(before)
    assert_answers_are_kept(lesson)
    assert {row["handle"]: (row["marks"], row["of"]) for row in after["roster"]} == marks_by_handle(
        lesson.logged()
    )
    lesson.hang_up()


def steady(desk: dict[str, Any]) -> dict[str, Any]:
    """The desk without what time and the outage change by right: server time, versions, the deadline."""
    public = {key: value for key, value in desk["public"].items() if key not in ("now", "version", "clock")}
    clock = {key: value for key, value in (desk["public"]["clock"] or {}).items() if key != "closes_at"}
    rest = {key: value for key, value in desk.items() if key not in ("now", "version", "public")}
    return {**rest, "public": public, "clock": clock}


def assert_answers_are_kept(lesson: Lesson) -> None:
    room = lesson.logged()
    kept = {
        (room.players[player].handle.lower(), current.number): (list(answer.choice), list(answer.typed))
        for current in room.rounds
        for player, answer in current.answers.items()
    }
    assert kept == {who: (said["choice"], said["typed"]) for who, said in lesson.said.items()}


def test_the_players_own_views_come_back_too(server: Server, start_server: StartServer) -> None:
    lesson = explained(server)
    before = {player: lesson.seats[player].done("show_view")["own"] for player in PLAYERS}
    lesson.restart(start_server)
    after = {player: lesson.seats[player].done("show_view")["own"] for player in PLAYERS}
    assert [own | {"now": 0} for own in after.values()] == [own | {"now": 0} for own in before.values()]
    assert before["ada"]["result"]["verdict"] == "right"
    lesson.hang_up()


def test_the_class_plays_on_after_a_kill(server: Server, start_server: StartServer) -> None:
    lesson = answering(server)
    lesson.restart(start_server)
    lesson.answer("cem")
    lesson.answer("bo")
    lesson.step("close_round")
    lesson.step("show_record")
    lesson.open_next()
    lesson.answer("ada", wrong=True)
    lesson.step("end_review")
    assert_answers_are_kept(lesson)
    assert marks_by_handle(lesson.logged()) == {"Ada": (1, 2), "Bo": (1, 2), "Cem": (1, 2)}
    lesson.hang_up()


def test_the_host_is_still_the_host_and_a_used_link_still_used(
    server: Server, start_server: StartServer
) -> None:
    lesson = gathered(server, [])
    old_link = server.desk_link
    lesson.restart(start_server)
    assert lesson.desk()["room"] == lesson.room
    assert host_cookie(old_link.replace(server.address, lesson.server.address)) == ""
    fresh = host_voice(lesson.server)
    assert fresh.done("open_desk", room=lesson.room)
    fresh.hang_up()
    lesson.hang_up()
