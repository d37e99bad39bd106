"""What the host does from the desk."""

from typing import Any

import pytest

from tests.realtime.hall import hall_with
from tests.room.sample_items import all_formats


def test_a_review_is_prepared_and_comes_to_the_desk_once_however_often_it_is_said() -> None:
    hall = hall_with()
    first = hall.say("host", "prepare_review", id="m7")
    again = hall.say("host", "prepare_review", id="m7")
    assert first["desk"]["room"] == again["desk"]["room"] != "room-1"
    assert len(first["desk"]["items"]) == 3
    assert len(hall.log.rooms_of_host("owner")) == 2
    assert "host" not in hall.lines.members["desk room-1"]
    assert "host" in hall.lines.members[f"desk {first['desk']['room']}"]


@pytest.mark.parametrize(
    "changes,code",
    [
        ({"course": "nowhere"}, "unknown_course"),
        ({"families": []}, "cannot_deal"),
        ({"families": ["magic"]}, "cannot_deal"),
    ],
)
def test_what_cannot_be_dealt_is_told_with_the_reason(changes: dict[str, object], code: str) -> None:
    reply = hall_with().say("host", "prepare_review", **changes)
    assert (reply["result"], reply["code"]) == ("refused", code)
    assert reply["text"].endswith((".", ")."))


def test_the_own_reviews_are_listed_newest_first_with_where_they_are() -> None:
    hall = hall_with()
    hall.clock.move(60)
    hall.say("host", "prepare_review", title="  Second \n try ")
    lines = hall.say("host", "list_reviews")["reviews"]
    assert [(line["title"], line["phase"], line["rounds"]) for line in lines] == [
        ("Second try", "preparing", 3),
        ("Shoulder and arm", "answering", len(all_formats())),
    ]
    hall.connect("other", "another")
    assert hall.say("other", "list_reviews")["reviews"] == []


def test_a_whole_review_is_run_from_the_desk() -> None:
    hall = hall_with("ada")
    steps: list[tuple[str, dict[str, Any]]] = [
        ("add_time", {}),
        ("pause_round", {}),
        ("resume_round", {}),
        ("close_round", {}),
        ("show_record", {}),
        ("strike_item", {}),
        ("restore_item", {}),
        ("show_standings", {}),
        ("rename_player", {"player": "p1", "handle": "Ada A"}),
        ("drop_item", {"position": 0, "item": "pick-three"}),
        ("open_round", {"round": 2}),
        ("remove_player", {"player": "p1"}),
        ("end_review", {"round": 2}),
    ]
    for kind, fields in steps:
        assert hall.say("host", kind, **fields)["result"] == "done", kind
    room = hall.room()
    assert (room.phase, room.standings, dict(room.players), len(room.rounds)) == ("finished", True, {}, 2)
    assert room.rounds[0].limit_ms == 45_000


def test_an_item_is_swapped_for_one_of_the_same_course() -> None:
    hall = hall_with()
    desk = hall.say("host", "prepare_review")["desk"]
    old = desk["items"][1]["id"]
    assert hall.say("host", "swap_item", position=1, item=old)["result"] == "done"
    items = hall.say("host", "show_view")["desk"]["items"]
    assert len(items) == 3
    assert old not in {item["id"] for item in items}
    assert hall.say("host", "swap_item", position=1, item=old)["result"] == "done"
    assert hall.say("host", "show_view")["desk"]["items"] == items


def blueprint(rounds: int, **more: Any) -> dict[str, Any]:
    return {"cells": [{"region": "forearm", "family": "action", "rounds": rounds}], **more}


def test_a_blueprint_says_how_many_rounds_there_are_and_is_kept_with_the_plan() -> None:
    hall = hall_with()
    desk = hall.say("host", "prepare_review", rounds=9, families=[], blueprint=blueprint(2, warm_up=1))[
        "desk"
    ]
    assert [(item["family"], item["warm_up"]) for item in desk["items"]] == [
        ("look_alike", True),
        ("action", False),
        ("action", False),
    ]
    assert desk["families"] == ["action"]
    plan = hall.rooms.room(desk["room"]).plan
    assert plan.rounds == 3
    assert plan.blueprint is not None
    assert plan.blueprint.rounds == 3


@pytest.mark.parametrize(
    "wanted,told",
    [
        (
            blueprint(60),
            "Forearm, action: 60 rounds are wanted, but Upper limb, introduction yields 10 there",
        ),
        (blueprint(60, warm_up=1), "A review has 1 to 60 rounds; the blueprint asks for 61."),
        (blueprint(0, share=5), "A review has 1 to 60 rounds; the blueprint asks for 0."),
    ],
)
def test_a_blueprint_that_cannot_be_dealt_is_told_with_its_cell(wanted: dict[str, Any], told: str) -> None:
    reply = hall_with().say("host", "prepare_review", blueprint=wanted)
    assert (reply["result"], reply["code"]) == ("refused", "cannot_deal")
    assert told in reply["text"]
