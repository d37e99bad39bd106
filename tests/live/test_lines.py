"""Lost lines, repeats, forgeries and nonsense against a real server."""

from collections.abc import Iterator
from typing import Any

import pytest
from socketio.exceptions import ConnectionError as Refused

from tests import serving
from tests.live.lesson import Lesson, gathered
from tests.live.voices import Voice, host_cookie


@pytest.fixture(scope="module")
def lesson(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Lesson]:
    """One class with its first round open; these tests leave it as it is, answers aside."""
    server = serving.start(tmp_path_factory.mktemp("lines") / "data")
    lesson = gathered(server, ["ada", "bo"])
    lesson.open_next()
    yield lesson
    lesson.hang_up()
    server.stop()


def answers(lesson: Lesson) -> dict[str, tuple[str, ...]]:
    room = lesson.logged()
    given = room.rounds[0].answers
    return {room.players[player].handle: answer.choice for player, answer in given.items()}


def test_a_message_sent_twice_is_answered_alike_and_logged_once(lesson: Lesson) -> None:
    message = {"id": "same", "type": "submit_answer", "round": 1, "choice": ["A"]}
    first = lesson.seats["ada"].say_raw(message)
    before = lesson.logged().version
    again = lesson.seats["ada"].say_raw(message)
    assert {**first, "now": 0} == {**again, "now": 0}
    assert lesson.logged().version == before
    assert answers(lesson)["Ada"] == ("A",)


def test_a_player_who_lost_the_line_finds_seat_and_answer_again(lesson: Lesson) -> None:
    lesson.seats["bo"].done("submit_answer", round=1, choice=["B"])
    lesson.seats["bo"].hang_up()
    back = Voice(lesson.server)
    reply = back.done("resume_seat", door_code=lesson.door, seat_key="secret key of bo")
    assert reply["own"]["handle"] == "Bo"
    assert reply["own"]["answer"]["choice"] == ["B"]
    back.done("submit_answer", round=1, choice=["C"])
    assert answers(lesson)["Bo"] == ("C",)
    lesson.seats["bo"] = back


def test_two_phones_at_one_seat_are_one_player(lesson: Lesson) -> None:
    second = Voice(lesson.server)
    second.done("resume_seat", door_code=lesson.door, seat_key="secret key of ada")
    second.done("submit_answer", round=1, choice=["D"])
    assert answers(lesson)["Ada"] == ("D",)
    second.hang_up()


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


def test_who_says_too_much_is_slowed_down_and_not_cut_off(lesson: Lesson) -> None:
    voice = Voice(lesson.server)
    codes = [voice.say("probe_time")["code"] for _ in range(60)]
    assert "slow_down" in codes
    assert voice.is_connected()
    assert lesson.seats["ada"].done("probe_time")
    voice.hang_up()


def test_a_full_room_says_so(start_server: serving.StartServer, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("QUIZROOM_CAPACITY", "1")
    lesson = gathered(start_server(), ["ada"])
    voice = Voice(lesson.server)
    reply = voice.say("enter_seat", door_code=lesson.door, handle="Bo", seat_key="b")
    assert reply["code"] == "room_full"
    voice.hang_up()
    lesson.hang_up()
