"""What the host does from the desk, and that nobody else can."""

import pytest

from quizroom.protocol.desk_messages import ListReviews
from quizroom.protocol.review_messages import ReviewMessage
from quizroom.realtime.desk_replies import HostMessage
from quizroom.realtime.rights import RIGHTS
from tests.protocol.wording import message
from tests.realtime.hall import hall_with
from tests.room.samples import preparation

OF_BENCHES = {"seat_at_bench", "draw_benches", "rename_bench"}
OF_HOSTS = sorted(RIGHTS.keys() - OF_BENCHES)


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

    assert all(
        isinstance(read_message(message(kind)), HostMessage | ReviewMessage | ListReviews)
        for kind in OF_HOSTS
    )


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


def test_an_unknown_review_is_told() -> None:
    hall = hall_with()
    assert hall.say("host", "open_desk", room="nowhere")["code"] == "unknown_room"
    hall.connect("fresh", "owner")
    assert hall.say("fresh", "open_round")["code"] == "unknown_room"
