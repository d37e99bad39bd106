"""A talk over real lines: nothing held is told, and a kill in the middle of it costs nobody anything."""

import json
from typing import Any

from quizroom.realtime.alarms import RECONNECT_MS
from tests.live.lesson import PLAYERS, Lesson, gathered
from tests.live.test_secrets import TELLING_FIELDS, fields_in, said_to, secrets_of
from tests.live.voices import Voice
from tests.serving import Server, StartServer


def answer_again(lesson: Lesson, player: str) -> dict[str, Any]:
    key = [option["letter"] for option in lesson.item()["options"] if option["is_key"]]
    return lesson.seats[player].done("submit_answer", round=1, choice=key, again=True)


def watchers(lesson: Lesson) -> list[Voice]:
    assert lesson.wall is not None
    return [lesson.wall, *lesson.seats.values()]


def told_nothing(lesson: Lesson) -> None:
    """What seats and wall have heard until now holds no key, no reason, no share and no mark."""
    for voice in watchers(lesson):
        voice.done("show_view")
    heard = said_to(watchers(lesson))
    text = json.dumps(heard, ensure_ascii=False)
    assert len(heard) > 10
    assert not fields_in(heard) & (TELLING_FIELDS | {"share", "verdict", "place"})
    assert all(secret not in text for secret in secrets_of(lesson.item()))


def test_a_talk_tells_nothing_and_outlives_a_kill_with_its_clock_and_second_answers(
    server: Server, start_server: StartServer
) -> None:
    lesson = gathered(server, holds_results=True, families=["nerve"], timing="fixed", seconds=60)
    said_to(watchers(lesson))
    lesson.open_next()
    for place, player in enumerate(PLAYERS):
        lesson.answer(player, wrong=place > 0)
    lesson.step("close_round")
    lesson.step("let_talk", seconds=90)
    told_nothing(lesson)
    clock = lesson.desk()["public"]["clock"]
    lesson.restart(start_server)
    view = lesson.desk()["public"]
    assert (view["phase"], view["clock"]["limit_ms"]) == ("talking", 90_000)
    assert view["clock"]["closes_at"] >= clock["closes_at"] + RECONNECT_MS
    lesson.step("open_again")
    answer_again(lesson, "bo")
    lesson.restart(start_server)
    assert lesson.desk()["public"]["phase"] == "answering again"
    assert set(handles(lesson, lesson.logged().rounds[0].second_answers)) == {"Bo"}
    answer_again(lesson, "bo")  # the repeat of whoever missed the acknowledgement
    answer_again(lesson, "cem")
    lesson.step("close_again")
    told_nothing(lesson)
    lesson.step("show_result")
    assert lesson.wall is not None
    shown = lesson.wall.last("public", lambda public: public["result"])
    assert (shown["second"]["first_right"], shown["second"]["right"], shown["second"]["answered"]) == (
        1,
        2,
        2,
    )
    own = lesson.seats["bo"].last("own", lambda seen: seen["result"])
    assert (own["result"]["verdict"], own["result"]["second"], own["marks"]) == ("wrong", "right", 0)
    lesson.hang_up()


def handles(lesson: Lesson, players: Any) -> list[str]:
    """The handles of these players, as the log has them."""
    return [lesson.logged().players[player].handle for player in players]


def test_a_twin_is_put_next_for_the_host_alone_to_see(server: Server) -> None:
    lesson = gathered(server, ["ada"], holds_results=True, families=["action"])
    lesson.open_next()
    for step in ("close_round", "let_talk", "open_again", "close_again"):
        lesson.step(step)
    said_to(watchers(lesson))
    lesson.step("ask_twin")
    twin = lesson.seen["items"][1]
    assert (twin["twin_of"], twin["state"]) == (1, "ahead")
    lesson.step("ask_twin")
    assert [item["twin_of"] for item in lesson.seen["items"]].count(1) == 1
    for voice in watchers(lesson):
        voice.done("show_view")
    assert twin["stem"] not in json.dumps(said_to(watchers(lesson)), ensure_ascii=False)
    lesson.hang_up()
