"""How players come into a room, and what they are told when they cannot."""

import pytest

from quizroom.room.commands import EndReview
from tests.realtime.hall import enter, hall_with


def test_who_enters_gets_the_views_and_hears_the_room() -> None:
    hall = hall_with(round_open=False)
    reply = enter(hall, "ada")
    assert (reply["result"], reply["own"]["handle"], reply["public"]["players"]) == ("done", "Ada", 1)
    assert reply["desk"] is None
    assert "ada" in hall.lines.members["public room-1"]


@pytest.mark.parametrize("typed_code", ["{}", "{} ", "-{}", "lower"])
def test_a_door_code_is_taken_as_people_type_it(typed_code: str) -> None:
    hall = hall_with()
    code = hall.room().door_code
    said = code.lower() if typed_code == "lower" else typed_code.format(code)
    hall.connect("ada")
    assert hall.say("ada", "enter_seat", door_code=said)["result"] == "done"


@pytest.mark.parametrize("kind", ["enter_seat", "resume_seat", "watch_wall"])
def test_a_wrong_door_code_is_told(kind: str) -> None:
    hall = hall_with()
    hall.connect("ada")
    reply = hall.say("ada", kind, door_code="XXXXX")
    assert (reply["result"], reply["code"]) == ("refused", "unknown_door")
    assert hall.say("ada", "probe_time")["result"] == "done"


def test_entering_again_with_the_same_key_is_the_same_seat() -> None:
    hall = hall_with("ada")
    again = enter(hall, "ada")
    assert again["own"]["player"] == "p1"
    assert len(hall.room().players) == 1


def test_a_lost_connection_finds_its_seat_and_answer_again() -> None:
    hall = hall_with("ada")
    hall.say("ada", "submit_answer", choice=["B"])
    hall.gateway.disconnect("ada")
    hall.connect("ada-2")
    door = hall.room().door_code
    reply = hall.say("ada-2", "resume_seat", door_code=door, seat_key="key of ada")
    assert reply["own"]["answer"] == {"round": 1, "choice": ["B"], "typed": [], "certainty": None}
    assert hall.say("ada-2", "submit_answer", choice=["C"])["result"] == "done"
    assert hall.room().rounds[0].answers["p1"].choice == ("C",)


def test_a_finished_review_lets_its_players_look_again_but_nobody_new_in() -> None:
    hall = hall_with("ada")
    hall.rooms.handle("room-1", EndReview())
    assert enter(hall, "bo")["code"] == "finished"
    assert enter(hall, "ada")["public"]["phase"] == "finished"


@pytest.mark.parametrize(
    "handle,code", [("ADA", "handle_taken"), ("  ", "bad_handle"), ("y" * 60, "bad_handle")]
)
def test_a_handle_that_cannot_be_had_is_told(handle: str, code: str) -> None:
    hall = hall_with("ada")
    hall.connect("bo")
    reply = hall.say("bo", "enter_seat", door_code=hall.room().door_code, handle=handle, seat_key="b")
    assert reply["code"] == code
