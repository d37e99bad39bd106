"""Messages of the host that others have seen: said again by whoever it is, they do nothing."""

import pytest

from quizroom.realtime.rights import RIGHTS
from quizroom.service.host_ports import Host
from tests.protocol.wording import message
from tests.realtime.hall import Hall, hall_with

OF_BOTH = {"draw_benches"}
"""What openers of groups may say too, so the room itself refuses it."""


def hall_of_strangers() -> Hall:
    """A round is open; besides its people there are somebody without a seat and a host of another room."""
    hall = hall_with("ada")
    hall.connect("stranger")
    hall.hosts["yarrow"] = Host(id="yarrow", name="Dr. Q. Yarrow", role="owner")
    hall.connect("other host", "yarrow")
    return hall


@pytest.mark.parametrize("kind", sorted(RIGHTS))
def test_what_the_host_has_said_does_nothing_in_another_mouth(kind: str) -> None:
    hall = hall_of_strangers()
    captured = message(kind, id="seen on the wire")
    hall.gateway.say("host", captured)
    room = hall.rooms.find("room-1")
    for who in ("ada", "wall", "stranger"):
        reply = hall.gateway.say(who, captured)
        assert reply["result"] == "refused", (who, reply)
        assert reply["code"] == "not_host" or kind in OF_BOTH
        assert (reply["desk"], reply["reviews"]) == (None, None)
    assert hall.rooms.find("room-1") == room


@pytest.mark.parametrize("kind", sorted(RIGHTS))
def test_another_host_cannot_carry_it_out_in_this_room_either(kind: str) -> None:
    hall = hall_of_strangers()
    before = hall.room()
    hall.gateway.say("other host", message(kind, id="seen on the wire"))
    assert hall.room() == before


@pytest.mark.parametrize("kind", sorted(RIGHTS))
def test_a_repeat_from_the_host_itself_changes_nothing_more(kind: str) -> None:
    hall = hall_of_strangers()
    captured = message(kind, id="seen on the wire")
    first = hall.gateway.say("host", captured)
    version = {room.id: room.version for room in hall.rooms.live()}
    again = hall.gateway.say("host", captured)
    assert {room.id: room.version for room in hall.rooms.live()} == version
    assert again["result"] in ("done", "refused")
    if first["result"] == "refused":
        assert again["code"] == first["code"]
