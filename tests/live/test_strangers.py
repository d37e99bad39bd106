"""What strangers, forgers and talkers of nonsense get from a real server: a sentence, and nothing else."""

from typing import Any

import pytest
from socketio.exceptions import ConnectionError as Refused

from tests.live.lesson import Lesson
from tests.live.voices import Voice, host_cookie

NONSENSE: list[Any] = [
    None,
    [],
    "say",
    7,
    {},
    {"id": "x"},
    {"id": "x", "type": "enter"},
    {"id": "x", "type": "submit_answer", "round": 1, "choice": ["A"], "player": "somebody"},
    {"id": "x", "type": "submit_answer", "round": 1, "choice": "A"},
    {"id": "x" * 500, "type": "probe_time"},
    {"id": "x", "type": "enter_seat", "door_code": "C", "handle": "x" * 50_000, "seat_key": "k"},
    b"\x00\xff",
    {"id": "x", "type": b"\x00"},
]


def test_nonsense_is_answered_in_a_sentence_and_the_line_lives(lesson: Lesson) -> None:
    voice = Voice(lesson.server)
    for raw in NONSENSE:
        reply = voice.say_raw(raw)
        assert (reply["result"], reply["code"]) == ("refused", "bad_message")
        assert reply["text"].endswith(".")
    assert voice.is_connected()
    assert voice.done("probe_time")["now"] > 0
    voice.hang_up()


@pytest.mark.parametrize(
    "kind,fields,code",
    [
        ("enter_seat", {"door_code": "XXXXX", "handle": "Cem", "seat_key": "c"}, "unknown_door"),
        ("watch_wall", {"door_code": "XXXXX"}, "unknown_door"),
        ("enter_seat", {"handle": "ADA", "seat_key": "c"}, "handle_taken"),
        ("enter_seat", {"handle": " ", "seat_key": "c"}, "bad_handle"),
        ("resume_seat", {"seat_key": "guessed"}, "unknown_seat"),
        ("submit_answer", {"round": 1, "choice": ["A"]}, "no_seat"),
        ("close_round", {"round": 1}, "not_host"),
        ("end_review", {"round": 1}, "not_host"),
        ("list_reviews", {}, "not_host"),
    ],
)
def test_what_a_stranger_may_not_do_is_told_in_a_sentence(
    lesson: Lesson, kind: str, fields: dict[str, Any], code: str
) -> None:
    before = lesson.logged()
    voice = Voice(lesson.server)
    door = {"door_code": lesson.door} if kind in ("enter_seat", "resume_seat") else {}
    reply = voice.say(kind, **(door | fields))
    assert (reply["result"], reply["code"]) == ("refused", code)
    assert reply["text"].endswith(".")
    assert voice.done("probe_time")
    assert lesson.logged() == before
    voice.hang_up()


@pytest.mark.parametrize("kind", ["open_desk", "close_round", "strike_item", "remove_player"])
def test_a_player_is_no_host_whatever_the_cookie_says(lesson: Lesson, kind: str) -> None:
    fields: dict[str, dict[str, Any]] = {
        "open_desk": {"room": lesson.room},
        "close_round": {"round": 1},
        "strike_item": {"round": 1},
        "remove_player": {"player": "p"},
    }
    for cookie in ("quizroom_host=forged", "quizroom_host=", "quizroom_host=owner", "x"):
        voice = Voice(lesson.server, Cookie=cookie)
        assert voice.say(kind, **fields[kind])["code"] == "not_host"
        voice.hang_up()


def test_a_page_of_another_site_cannot_connect_with_the_hosts_cookie(lesson: Lesson) -> None:
    with pytest.raises(Refused):
        Voice(lesson.server, Cookie=f"quizroom_host={lesson.cookie}", Origin="http://elsewhere.example")


def test_a_desk_link_that_was_used_is_no_way_in(lesson: Lesson) -> None:
    assert host_cookie(lesson.server.desk_link) == ""
