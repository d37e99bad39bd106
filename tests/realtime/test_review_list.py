"""The list of reviews on the desk: what owners do with it."""

from typing import Any

import pytest

from quizroom.realtime import review_replies
from quizroom.room.host_commands import RenameReview
from tests.realtime.hall import HOST, Hall, hall_with
from tests.room.samples import NOON, preparation

HOUR_MS = 3_600_000
NOON_MS = int(NOON.timestamp() * 1000)


def hall() -> Hall:
    """A hall in which a class is in room-1, and room-2 is laid out for later."""
    made = hall_with("ada")
    made.rooms.handle("room-2", preparation(host=HOST))
    return made


def listed(hall: Hall, kind: str = "list_reviews", **fields: Any) -> dict[str, dict[str, Any]]:
    reply = hall.say("host", kind, **fields)
    assert reply["result"] == "done", reply
    return {line["room"]: line for line in reply["reviews"]}


def test_a_title_is_changed_and_the_list_follows() -> None:
    lines = listed(hall(), "rename_review", room="room-2", title=" Forearm  and hand ")
    assert lines["room-2"]["title"] == "Forearm and hand"


def test_a_copy_has_the_same_items_and_is_made_once() -> None:
    here = hall()
    lines = listed(here, "copy_review", room="room-1", dealt="same")
    assert listed(here, "copy_review", room="room-1", dealt="same") == lines
    (copy,) = lines.keys() - {"room-1", "room-2"}
    assert (lines[copy]["title"], lines[copy]["phase"]) == ("Copy of Shoulder and arm", "preparing")
    first, second = here.rooms.room("room-1"), here.rooms.room(copy)
    assert second.ahead == (*(opened.item for opened in first.rounds), *first.ahead)
    assert (second.players, second.rounds, second.host) == ({}, (), HOST)


def test_a_copy_dealt_anew_has_the_same_plan_and_other_items() -> None:
    here = hall_with(round_open=False)
    here.say("host", "prepare_review", id="p", seed=7)
    (original,) = set(listed(here)) - {"room-1"}
    lines = listed(here, "copy_review", room=original, dealt="anew")
    (copy,) = set(lines) - {"room-1", original}
    plans = [here.rooms.room(room).plan for room in (original, copy)]
    assert plans[0].seed != plans[1].seed
    assert (plans[0].families, plans[0].rounds) == (plans[1].families, plans[1].rounds)
    assert here.rooms.room(copy).ahead != here.rooms.room(original).ahead


def test_a_review_is_planned_and_its_door_opens_itself_at_that_time() -> None:
    here = hall()
    at = NOON_MS + HOUR_MS
    lines = listed(here, "schedule_review", room="room-2", at=at, opens_itself=True)
    assert (lines["room-2"]["planned_at"], lines["room-2"]["opens_itself"]) == (at, True)
    here.clock.move(3599)
    assert here.review_list.open_doors_that_are_due() == ()
    here.clock.move(1)
    assert here.review_list.open_doors_that_are_due() == ("room-2",)
    assert here.review_list.open_doors_that_are_due() == ()
    assert listed(here)["room-2"]["phase"] == "gathering"


def test_a_door_that_was_due_long_ago_stays_shut() -> None:
    here = hall()
    listed(here, "schedule_review", room="room-2", at=NOON_MS + HOUR_MS, opens_itself=True)
    here.clock.move(13 * 3600)
    assert here.review_list.open_doors_that_are_due() == ()


def test_a_plan_can_be_taken_back_and_a_review_in_class_is_planned_no_more() -> None:
    here = hall()
    listed(here, "schedule_review", room="room-2", at=NOON_MS, opens_itself=True)
    assert listed(here, "schedule_review", room="room-2", at=None)["room-2"]["planned_at"] is None
    assert here.say("host", "schedule_review", room="room-1", at=NOON_MS)["code"] == "wrong_phase"


def test_a_review_is_put_away_and_taken_out_again() -> None:
    here = hall()
    assert listed(here, "archive_review", room="room-2")["room-2"]["archived"]
    assert not listed(here, "unarchive_review", room="room-2")["room-2"]["archived"]


@pytest.mark.parametrize("kind", ["archive_review", "delete_review"])
def test_a_review_with_a_class_in_it_is_neither_put_away_nor_deleted(kind: str) -> None:
    here = hall()
    assert here.say("host", kind, room="room-1")["code"] == "in_class"
    here.say("host", "end_review", round=1)
    assert here.say("host", kind, room="room-1")["result"] == "done"


def test_a_deleted_review_is_gone_for_everybody_and_a_repeat_is_harmless() -> None:
    here = hall()
    here.say("host", "end_review", round=1)
    for _ in range(2):
        assert set(listed(here, "delete_review", room="room-1")) == {"room-2"}
    assert here.log.read("room-1") == ()
    assert here.say("ada", "show_view")["code"] == "unknown_room"
    assert here.say("host", "show_view")["code"] == "unknown_room"


@pytest.mark.parametrize(
    "kind",
    ["rename_review", "change_review", "copy_review", "schedule_review", "archive_review", "delete_review"],
)
def test_nobody_does_anything_with_the_reviews_of_another_owner(kind: str) -> None:
    here = hall()
    here.connect("other", "sorrel")
    before = listed(here)
    assert here.say("other", kind, room="room-2")["code"] == "unknown_room"
    assert listed(here) == before


def test_a_new_title_is_on_the_desk_too() -> None:
    here = hall()
    here.rooms.handle("room-1", RenameReview(title="Arm"))
    assert here.say("host", "show_view")["desk"]["public"]["title"] == "Arm"


def test_of_many_reviews_the_newest_come_first_and_the_older_ones_when_asked_for(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr(review_replies, "MOST_LISTED", 2)
    here = hall()
    for number in range(3, 6):
        here.clock.move(60)
        here.rooms.handle(f"room-{number}", preparation(host=HOST))
    seen = []
    for skip in (0, 2, 4, 6):
        reply = here.say("host", "list_reviews", skip=skip)
        assert reply["reviews_in_all"] == 5
        seen.append([line["room"] for line in reply["reviews"]])
    assert [len(rooms) for rooms in seen] == [2, 2, 1, 0]
    assert {room for rooms in seen for room in rooms} == {f"room-{number}" for number in range(1, 6)}
    assert seen[0] == ["room-5", "room-4"]
