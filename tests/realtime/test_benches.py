"""Benches at the gate: who may say what, and who is told."""

from typing import Any

import pytest

from tests.realtime.hall import HOST, Hall

PLAYERS = ("ada", "bo", "cem", "dele")


def bench_hall(how: str = "choice") -> Hall:
    """A host's review with benches, four players in their seats, no round open yet."""
    hall = Hall()
    hall.connect("host", HOST)
    benches = {"how": how, "size": 3, "answers": True}
    hall.say("host", "prepare_review", benches=benches, typed=False, standings=True)
    hall.say("host", "open_door", round=0)
    for player in PLAYERS:
        hall.connect(player)
        door = hall.rooms.live()[0].door_code
        hall.say(player, "enter_seat", door_code=door, handle=player.title(), seat_key=f"key of {player}")
    return hall


def desk(hall: Hall) -> dict[str, Any]:
    seen: dict[str, Any] = hall.say("host", "show_view")["desk"]
    return seen


def bench_of(hall: Hall, player: str) -> dict[str, Any]:
    own: dict[str, Any] = hall.say(player, "show_view")["own"]["bench"]
    return own


def test_players_take_benches_and_everybody_sees_names_and_numbers_alone() -> None:
    hall = bench_hall()
    for player in PLAYERS[:3]:
        assert hall.say(player, "take_bench", bench="Carpals")["result"] == "done"
    assert bench_of(hall, "ada")["members"] == 3
    shown = hall.say("dele", "show_view")
    assert shown["public"]["benches"]["rows"] == [{"bench": "Carpals", "players": 3}]
    assert shown["own"]["bench"]["bench"] == ""
    assert "Ada" not in str(shown)


def test_the_host_draws_moves_and_is_warned() -> None:
    hall = bench_hall("drawn")
    assert hall.say("host", "draw_benches")["result"] == "done"
    version = desk(hall)["version"]
    hall.say("host", "draw_benches")
    assert desk(hall)["version"] == version
    assert {row["bench"] for row in desk(hall)["roster"]} == {"Bench 1"}
    assert desk(hall)["bench_warnings"] == []
    ada = next(row["player"] for row in desk(hall)["roster"] if row["handle"] == "Ada")
    assert hall.say("host", "seat_at_bench", player=ada, bench="Bench 2")["result"] == "done"
    assert desk(hall)["bench_warnings"] == ["Bench 2 has 1 player; three to six talk best."]
    assert hall.say("host", "rename_bench", bench="Bench 2", name="Tarsals")["result"] == "done"
    assert {row["bench"] for row in desk(hall)["roster"]} == {"Bench 1", "Tarsals"}
    assert hall.say("host", "rename_bench", bench="Bench 1", name="tarsals")["code"] == "bench_exists"


@pytest.mark.parametrize("kind", ["seat_at_bench", "draw_benches", "rename_bench"])
def test_nobody_but_the_host_draws_or_moves(kind: str) -> None:
    hall = bench_hall()
    hall.connect("stranger")
    assert hall.say("stranger", kind)["code"] == "not_host"
    assert hall.say("ada", kind)["code"] in ("not_host", "not_opener")
    hall.connect("other host", "somebody else")
    hall.say("other host", "watch_wall", door_code=hall.rooms.live()[0].door_code)
    assert hall.say("other host", kind)["code"] == "not_host"


def test_who_has_no_seat_takes_no_bench_and_rude_names_are_refused() -> None:
    hall = bench_hall()
    assert hall.say("host", "take_bench")["code"] == "no_seat"
    assert hall.say("ada", "take_bench", bench="a rude one")["code"] == "rude_handle"


def test_a_bench_is_told_what_it_has_handed_in_and_nobody_else_is() -> None:
    hall = bench_hall()
    for player in PLAYERS[:3]:
        hall.say(player, "take_bench", bench="Carpals")
    hall.say("host", "open_round", round=1)
    item = desk(hall)["items"][0]
    letters = [option["letter"] for option in item["options"]][: item["pick"]]
    assert hall.say("ada", "answer_for_bench", choice=letters)["code"] == "first_alone"
    assert hall.say("ada", "submit_answer", choice=letters)["result"] == "done"
    assert hall.say("ada", "answer_for_bench", choice=letters)["result"] == "done"
    hall.tell(with_tallies=True)
    told = bench_of(hall, "bo")
    assert (told["answered_alone"], told["answer"]["choice"], told["mark"]) == (1, letters, None)
    assert bench_of(hall, "dele")["answer"] is None
    assert hall.say("wall", "show_view")["code"] == "no_seat"
    hall.say("host", "close_round", round=1)
    assert bench_of(hall, "bo")["mark"] is not None
    assert [row["handle"] for row in desk(hall)["public"]["standings"]] == ["Carpals"]


def test_answers_of_a_bench_are_told_with_the_counts_not_one_by_one() -> None:
    hall = bench_hall()
    hall.say("ada", "take_bench", bench="Carpals")
    hall.tell(with_tallies=True)
    hall.say("bo", "take_bench", bench="Carpals")
    assert hall.tell() == []
    told = hall.tell(with_tallies=True)
    assert {event for event, _ in told} >= {"public", "own"}
