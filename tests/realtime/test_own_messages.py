"""A host's own items come into a review by message, and are told as such once their round is closed."""

from dataclasses import replace

from quizroom.marking import marks_of_room
from quizroom.service.own_ports import KeptItem
from quizroom.views.desk import desk_view
from quizroom.views.public import public_view
from tests.questions.own_samples import best, typed
from tests.realtime.hall import HOST, Hall
from tests.room.samples import NOON

BEST = best(picture=None)


def hall_with_library() -> Hall:
    hall = Hall()
    for own_id, own in (("i1", BEST), ("i2", typed()), ("draft", replace(BEST, stem=""))):
        hall.library.store.keep(KeptItem(id=own_id, host=HOST, changed_at=NOON, own=own))
    hall.library.store.keep(KeptItem(id="other", host="bracken", changed_at=NOON, own=BEST))
    hall.connect("host", HOST)
    hall.say("host", "prepare_review", id="order-1", rounds=2)
    return hall


def stems(hall: Hall) -> list[str]:
    (room,) = hall.rooms.live()
    return [item.stem for item in room.ahead]


def test_an_own_item_is_put_in_a_place_and_takes_the_place_of_another() -> None:
    hall = hall_with_library()
    first, second = stems(hall)
    assert hall.say("host", "add_own_item", position=1, own_item="i1")["result"] == "done"
    assert stems(hall) == [first, BEST.stem, second]
    (room,) = hall.rooms.live()
    swap = {"position": 0, "item": room.ahead[0].id, "own_item": "i2"}
    assert hall.say("host", "swap_for_own", **swap)["result"] == "done"
    assert hall.say("host", "swap_for_own", **swap)["result"] == "done"
    assert stems(hall) == [typed().stem, BEST.stem, second]


def test_a_dealt_item_takes_the_place_of_an_own_one_too() -> None:
    hall = hall_with_library()
    hall.say("host", "add_own_item", position=0, own_item="i2")
    (room,) = hall.rooms.live()
    assert hall.say("host", "swap_item", position=0, item=room.ahead[0].id)["result"] == "done"
    (room,) = hall.rooms.live()
    assert not room.ahead[0].by_host


def test_what_is_not_there_not_ready_or_another_hosts_is_refused() -> None:
    hall = hall_with_library()
    codes = [
        hall.say("host", "add_own_item", position=0, own_item=own_id)["code"]
        for own_id in ("gone", "other", "draft")
    ]
    assert codes == ["no_such_own_item", "no_such_own_item", "not_ready"]
    hall.connect("player")
    assert hall.say("player", "add_own_item")["code"] == "not_host"


def test_who_wrote_it_is_told_to_the_desk_at_once_and_to_all_once_the_round_is_closed() -> None:
    hall = hall_with_library()
    hall.say("host", "add_own_item", position=0, own_item="i1")
    (room,) = hall.rooms.live()
    assert [item.by_host for item in desk_view(room, marks_of_room(room), NOON).items] == [True, False, False]
    told = []
    for kind in ("open_door", "open_round", "close_round", "show_record"):
        hall.say("host", kind, round=1)
        (room,) = hall.rooms.live()
        result = public_view(room, marks_of_room(room), NOON).result
        told.append(result is not None and result.by_host)
    assert told == [False, False, True, True]
    records = public_view(room, marks_of_room(room), NOON).records
    assert [record.muscle for record in records] == ["extensor_indicis"]
