"""Seats that belong to a player's own history."""

from typing import Any

import pytest

from quizroom.service.players import player_of
from tests.realtime.hall import Hall, hall_with

KEY, OTHER = "abcdefghijklmn27", "27abcdefghijklmn"


def enter_with_key(hall: Hall, name: str, key: str) -> dict[str, Any]:
    hall.connect(name)
    return hall.say(
        name,
        "enter_seat",
        door_code=hall.room().door_code,
        handle=name.title(),
        seat_key=f"key of {name}",
        player_key=key,
    )


def resume_with_key(hall: Hall, name: str, key: str) -> dict[str, Any]:
    door = hall.room().door_code
    return hall.say(name, "resume_seat", door_code=door, seat_key=f"key of {name}", player_key=key)


def owners(hall: Hall) -> list[str]:
    return [player.owner for player in hall.room().players.values()]


def test_who_enters_with_a_key_of_their_own_is_kept_under_its_hash_alone() -> None:
    hall = hall_with()
    assert enter_with_key(hall, "ada", KEY)["own"]["kept"] is True
    assert owners(hall) == [player_of(KEY)]
    assert KEY not in str(hall.log.read("room-1"))


def test_who_enters_without_one_is_not_kept() -> None:
    hall = hall_with()
    assert enter_with_key(hall, "ada", "")["own"]["kept"] is False
    assert owners(hall) == [""]


def test_coming_back_with_a_key_links_the_seat_and_without_one_lets_it_be() -> None:
    hall = hall_with("ada")
    assert resume_with_key(hall, "ada", KEY)["own"]["kept"] is True
    assert resume_with_key(hall, "ada", "")["own"]["kept"] is True
    assert resume_with_key(hall, "ada", OTHER)["own"]["kept"] is True
    assert owners(hall) == [player_of(OTHER)]


def test_a_seat_may_be_kept_or_not_at_any_time() -> None:
    hall = hall_with("ada")
    assert hall.say("ada", "keep_results", player_key=KEY)["own"]["kept"] is True
    assert hall.say("ada", "keep_results", player_key=KEY)["result"] == "done"
    assert hall.say("ada", "keep_results", player_key="")["own"]["kept"] is False
    assert player_of(KEY) not in str(hall.log.read("room-1"))


def test_only_a_seat_can_be_kept() -> None:
    assert hall_with().say("wall", "keep_results", player_key=KEY)["code"] == "no_seat"


@pytest.mark.parametrize("key", ["short", KEY.upper(), KEY + "2", "abcdefghijklmn01"])
def test_what_cannot_be_a_key_is_refused(key: str) -> None:
    hall = hall_with("ada")
    assert hall.say("ada", "keep_results", player_key=key)["code"] == "bad_message"


def test_nothing_that_others_get_tells_whose_history_a_seat_belongs_to() -> None:
    hall = hall_with()
    enter_with_key(hall, "ada", KEY)
    hall.say("host", "open_round", round=1)
    hall.tell(with_tallies=True)
    desk = hall.say("host", "show_view")
    wall = hall.say("wall", "show_view")
    for sent in (desk, wall):
        assert player_of(KEY) not in str(sent)
        assert "kept" not in str(sent)
