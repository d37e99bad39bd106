"""Lost lines, repeats, forgeries and nonsense against a real server."""

import pytest

from tests import serving
from tests.live.lesson import Lesson, gathered
from tests.live.voices import Voice


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
