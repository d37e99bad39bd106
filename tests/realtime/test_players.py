"""Players take seats, come back to them, and act for nobody else."""

from typing import Any

import pytest

from tests.protocol.wording import message
from tests.realtime.hall import enter, hall_with


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
