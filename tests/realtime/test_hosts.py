"""What the host does from the desk, and that nobody else can."""

from typing import Any

import pytest

from quizroom.realtime.desk_replies import HostMessage
from tests.protocol.wording import PLAIN, message
from tests.realtime.hall import hall_with
from tests.room.samples import preparation

OF_HOSTS = sorted(
    set(PLAIN) - {"enter_seat", "resume_seat", "watch_wall", "show_view", "probe_time", "submit_answer"}
)


@pytest.mark.parametrize("kind", OF_HOSTS)
@pytest.mark.parametrize("who", ["ada", "wall", "stranger"])
def test_nobody_else_can_do_what_the_host_does(kind: str, who: str) -> None:
    hall = hall_with("ada")
    hall.connect("stranger")
    before = hall.room()
    reply = hall.say(who, kind)
    assert (reply["result"], reply["code"]) == ("refused", "not_host")
    assert hall.room() is before
    assert hall.log.rooms_of_host("") == ()


def test_all_messages_of_hosts_are_among_these() -> None:
    from quizroom.protocol.codec import read_message  # noqa: PLC0415 - only here

    assert all(isinstance(read_message(message(kind)), HostMessage) for kind in OF_HOSTS)


@pytest.mark.parametrize(
    "kind", [kind for kind in OF_HOSTS if kind not in ("prepare_review", "list_reviews")]
)
def test_a_host_cannot_touch_the_review_of_another(kind: str) -> None:
    hall = hall_with("ada")
    hall.rooms.handle("room-2", preparation(host="another"))
    hall.connect("other", "another")
    assert hall.say("other", "open_desk", room="room-1")["code"] == "unknown_room"
    hall.say("other", "watch_wall", door_code=hall.room().door_code)
    before = hall.room()
    assert hall.say("other", kind)["code"] == "unknown_room"
    assert hall.room() is before


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
        ("Shoulder and arm", "answering", 4),
    ]
    hall.connect("other", "another")
    assert hall.say("other", "list_reviews")["reviews"] == []


def test_an_unknown_review_is_told() -> None:
    hall = hall_with()
    assert hall.say("host", "open_desk", room="nowhere")["code"] == "unknown_room"
    hall.connect("fresh", "owner")
    assert hall.say("fresh", "open_round")["code"] == "unknown_room"


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
