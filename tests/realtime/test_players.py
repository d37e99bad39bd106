"""Players take seats, come back to them, and act for nobody else."""

from typing import Any

import pytest

from quizroom.room.commands import EndReview
from tests.protocol.wording import message
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
    assert reply["own"]["answer"] == {"round": 1, "choice": ["B"], "typed": []}
    assert hall.say("ada-2", "submit_answer", choice=["C"])["result"] == "done"
    assert hall.room().rounds[0].answers["p1"].choice == ("C",)


def test_a_seat_is_proved_by_its_key_alone() -> None:
    hall = hall_with("ada")
    hall.connect("thief")
    door = hall.room().door_code
    for key in ("p1", "Ada", "key of  ada"):
        reply = hall.say("thief", "resume_seat", door_code=door, seat_key=key)
        assert (reply["result"], reply["code"]) == ("refused", "unknown_seat")
    assert hall.say("thief", "submit_answer", choice=["A"])["code"] == "no_seat"


@pytest.mark.parametrize("field", ["player", "player_id", "seat_key", "host"])
def test_nobody_can_name_another_in_an_answer(field: str) -> None:
    hall = hall_with("ada", "bo")
    reply = hall.say("bo", "submit_answer", choice=["A"], **{field: "p1"})
    assert (reply["result"], reply["code"]) == ("refused", "bad_message")
    hall.say("bo", "submit_answer", choice=["C"])
    assert set(hall.room().rounds[0].answers) == {"p2"}


@pytest.mark.parametrize("who", ["wall", "host", "stranger"])
def test_who_has_no_seat_cannot_answer(who: str) -> None:
    hall = hall_with("ada")
    hall.connect("stranger")
    assert hall.say(who, "submit_answer", choice=["A"])["code"] == "no_seat"
    assert hall.room().rounds[0].answers == {}


def test_the_reply_to_an_answer_says_which_round_it_is_in_the_log_for() -> None:
    hall = hall_with("ada")
    reply = hall.say("ada", "submit_answer", choice=["B"])
    assert (reply["result"], reply["answer_round"], reply["public"]) == ("done", 1, None)
    assert hall.say("ada", "submit_answer", choice=["B"]) == reply


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


def test_the_views_are_shown_again_on_asking() -> None:
    hall = hall_with("ada")
    hall.connect("stranger")
    seat, wall, desk = (hall.say(who, "show_view") for who in ("ada", "wall", "host"))
    assert seat["own"]["handle"] == "Ada"
    assert (wall["own"], wall["public"]) == (None, seat["public"])
    assert (desk["desk"]["room"], desk["desk"]["public"]) == ("room-1", seat["public"])
    assert hall.say("stranger", "show_view")["code"] == "no_seat"


def test_no_reply_to_a_seat_or_the_wall_holds_what_only_the_host_may_know() -> None:
    hall = hall_with("ada")
    replies: list[dict[str, Any]] = [enter(hall, "bo"), enter(hall, "ada")]
    replies += [hall.say("wall", "watch_wall", door_code=hall.room().door_code), hall.say("ada", "show_view")]
    replies += [hall.gateway.say("ada", message("submit_answer", choice=["B"]))]
    said = str(replies)
    assert all(reply["desk"] is None for reply in replies)
    assert all(word not in said for word in ("is_key", "reason", "Because", "key_text", "deltoid tuberosity"))
