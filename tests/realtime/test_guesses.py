"""Guessing door codes gets nobody far, and keeps nobody out who has a seat."""

from typing import Any

from quizroom.service.reviews import DOOR_LENGTH, DOOR_LETTERS
from tests.realtime.hall import Hall, enter, hall_with

ALL_DOORS = len(DOOR_LETTERS) ** DOOR_LENGTH


def guess(hall: Hall, sid: str, code: str = "YYYYY") -> dict[str, Any]:
    return hall.say(sid, "enter_seat", door_code=code, handle="Guesser", seat_key="k" * 20)


def wear_out(hall: Hall) -> int:
    """Guess from ever new connections until the server has had enough; how many guesses that took."""
    for number in range(1000):
        hall.connect(f"guesser {number}")
        if guess(hall, f"guesser {number}")["code"] == "slow_down":
            return number
    raise AssertionError("the server never had enough")


def test_one_connection_may_mistype_a_few_times_and_must_then_wait() -> None:
    hall = hall_with()
    hall.connect("clumsy")
    codes = [guess(hall, "clumsy")["code"] for _ in range(6)]
    assert codes == ["unknown_door"] * 5 + ["slow_down"]
    hall.steady_s += 1
    assert enter_by(hall, "clumsy")["result"] == "done"


def enter_by(hall: Hall, sid: str) -> dict[str, Any]:
    return hall.say(
        sid, "enter_seat", door_code=hall.room().door_code, handle=sid.title(), seat_key=f"key {sid}"
    )


def test_many_connections_together_are_slowed_down_without_telling_right_from_wrong() -> None:
    hall = hall_with("ada")
    assert wear_out(hall) == 300
    hall.connect("late")
    right, wrong = enter_by(hall, "late"), guess(hall, "late")
    assert (right["code"], right["text"]) == (wrong["code"], wrong["text"])
    assert right["code"] == "slow_down"
    hall.clock.move(1)
    assert enter_by(hall, "late")["result"] == "done"


def test_who_has_a_seat_comes_back_to_it_all_the_same() -> None:
    hall = hall_with("ada")
    wear_out(hall)
    hall.connect("ada again")
    door = hall.room().door_code
    resumed = hall.say("ada again", "resume_seat", door_code=door, seat_key="key of ada")
    assert resumed["result"] == "done"
    assert hall.say("ada again", "resume_seat", door_code=door, seat_key="x" * 20)["code"] == "slow_down"


def test_an_hour_of_guessing_finds_a_room_with_a_chance_of_one_in_forty() -> None:
    hall, found = hall_with(), 0
    hall.clock.move(0)
    for second in range(60):
        hall.clock.move(1)
        for number in range(20):
            hall.connect(f"{second} {number}")
            found += guess(hall, f"{second} {number}")["code"] == "unknown_door"
    an_hour = 300 + (found - 300) * 60
    assert an_hour / ALL_DOORS < 1 / 40


def test_a_code_outlives_its_review_by_half_a_day() -> None:
    hall = hall_with("ada")
    hall.say("host", "close_round", round=1)
    hall.say("host", "end_review", round=1)
    door = hall.room().door_code
    hall.connect("wall 2")
    hall.clock.move(11 * 3600)
    assert hall.say("wall 2", "watch_wall", door_code=door)["result"] == "done"
    hall.clock.move(2 * 3600)
    assert hall.say("wall 2", "watch_wall", door_code=door)["code"] == "unknown_door"


def test_a_rude_handle_is_refused_and_another_let_in() -> None:
    hall = hall_with()
    assert enter(hall, "rude rail")["code"] == "rude_handle"
    assert enter(hall, "teal talus")["result"] == "done"


def test_a_rude_handle_is_no_better_in_a_group() -> None:
    hall = Hall()
    hall.connect("ada")
    assert hall.say("ada", "open_group", handle="Rude Rail")["code"] == "rude_handle"
    assert hall.say("ada", "open_group", handle="Teal Talus")["result"] == "done"
    assert hall.say("ada", "rename_self", handle="rude again")["code"] == "rude_handle"
