"""More time that a player takes, over real lines: it outlives a kill, and no step ends it unsaid."""

import json

from tests.live.lesson import Lesson, gathered
from tests.live.test_secrets import said_to
from tests.live.voices import Voice
from tests.serving import Server, StartServer


def others(lesson: Lesson) -> list[Voice]:
    assert lesson.wall is not None
    return [lesson.wall, lesson.seats["bo"], lesson.seats["cem"]]


def heard_by_others(lesson: Lesson) -> str:
    """What the others have been told since they were last asked, their own views asked for anew among it."""
    for voice in others(lesson):
        voice.done("show_view")
    return json.dumps(said_to(others(lesson)))


def test_time_that_was_taken_outlives_a_kill_and_ends_only_when_the_host_says_so(
    server: Server, start_server: StartServer
) -> None:
    lesson = gathered(server, holds_results=True, families=["nerve"], timing="fixed", seconds=60)
    ada = lesson.seats["ada"].done("take_time_always", on=True)
    assert ada["own"]["time_to_take"]["always"]
    lesson.open_next()
    version = lesson.seats["bo"].done("show_view")["public"]["version"]
    taken = {"round": 1, "time": 1}
    clock = lesson.seats["ada"].done("take_time", **taken)["own"]["clock"]
    assert clock["limit_ms"] == 11 * 60_000
    assert lesson.seats["ada"].done("take_time", **taken)["own"]["clock"] == clock  # a repeat adds nothing
    assert lesson.seats["bo"].done("show_view")["public"]["version"] == version
    lesson.answer("bo")
    lesson.step("close_round")
    lesson.restart(start_server)
    heard = heard_by_others(lesson)
    assert '"always": true' not in heard
    assert '"taken": 1' not in heard
    assert '"answered": null' in heard

    for step in ({"kind": "show_result"}, {"kind": "let_talk", "seconds": 60}, {"kind": "end_review"}):
        kind = str(step.pop("kind"))
        assert lesson.host.say(kind, round=1, **step)["code"] == "own_time_runs"
    lesson.desk()
    lesson.answer("ada")
    assert lesson.logged().rounds[0].times_taken == {ada["own"]["player"]: 1}
    lesson.step("show_result")
    assert lesson.seats["ada"].last("own", lambda own: own["result"])["result"]["verdict"] == "right"
    lesson.open_next()
    clock = lesson.seats["ada"].last("own", lambda own: own["round"] == 2 and own["clock"])["clock"]
    assert clock["limit_ms"] == 10 * 60_000
    lesson.step("close_round")
    lesson.step("end_review", ends_own_time=True)
    assert lesson.seats["ada"].say("take_time", round=2, time=1)["code"] == "finished"
    lesson.hang_up()
