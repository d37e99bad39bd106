"""Who may say what: the table, over all messages, and over what the gateway really does."""

import pytest

from quizroom.realtime.host_watch import close_desks_of_the_gone
from quizroom.realtime.rights import OF_PLAYERS, RIGHTS
from quizroom.service.host_ports import Host
from tests.protocol.wording import all_types
from tests.realtime.hall import HOST, Hall, hall_with

ASSISTANT = Host(id="bracken", name="T. Bracken", role="assistant", helps=HOST)
OWNS = sorted(kind for kind, right in RIGHTS.items() if right == "own")
RUNS = sorted(kind for kind, right in RIGHTS.items() if right == "run")


OF_OWNERS = {
    *("prepare_review", "copy_review", "rename_review", "change_review", "schedule_review"),
    *("archive_review", "unarchive_review", "delete_review", "add_own_item", "swap_for_own"),
}
"""By the handbook (hosts.md): whoever helps an owner runs reviews, and neither lays out nor changes any."""


def with_assistant() -> Hall:
    """A hall in which a round is open, with the desk of an assistant on connection `helper`."""
    hall = hall_with("ada")
    hall.hosts["bracken"] = ASSISTANT
    hall.connect("helper", "bracken")
    assert hall.say("helper", "open_desk", room="room-1")["result"] == "done"
    return hall


def test_every_message_is_in_the_table_of_hosts_or_among_those_of_players() -> None:
    assert RIGHTS.keys() | OF_PLAYERS == all_types()
    assert not RIGHTS.keys() & OF_PLAYERS


def test_what_is_for_owners_alone_is_what_the_handbook_says() -> None:
    assert {kind for kind, right in RIGHTS.items() if right == "own"} == OF_OWNERS


@pytest.mark.parametrize("kind", OWNS)
def test_an_assistant_is_refused_what_only_the_owner_may(kind: str) -> None:
    hall = with_assistant()
    before = hall.room(), hall.log.rooms_of_host(HOST)
    reply = hall.say("helper", kind)
    assert (reply["result"], reply["code"]) == ("refused", "owner_only")
    assert (hall.room(), hall.log.rooms_of_host(HOST)) == before


@pytest.mark.parametrize("kind", RUNS)
def test_an_assistant_gets_the_same_reply_as_the_owner_to_all_else(kind: str) -> None:
    replies = []
    for who in ("host", "helper"):
        hall = with_assistant()
        reply = hall.say(who, kind)
        replies.append((reply["result"], reply["code"]))
    assert replies[0] == replies[1]
    assert replies[1][1] not in ("owner_only", "not_host")


@pytest.mark.parametrize("kind", sorted(RIGHTS.keys() | {"show_view"}))
def test_who_has_signed_out_is_refused_on_the_line_that_is_still_open(kind: str) -> None:
    hall = with_assistant()
    hall.hosts["bracken"] = None
    before = hall.room()
    reply = hall.say("helper", kind)
    assert (reply["code"], reply["desk"], reply["reviews"]) == ("not_host", None, None)
    assert hall.room() is before


@pytest.mark.parametrize("role", ["owner", "assistant"])
def test_nobody_sees_or_runs_the_reviews_of_an_owner_whom_they_do_not_help(role: str) -> None:
    hall = hall_with("ada")
    stranger = Host(id="y", name="Dr. Q. Yarrow", role="owner")
    helper = Host(id="h", name="R. Teasel", role="assistant", helps="y")
    hall.hosts["s"] = stranger if role == "owner" else helper
    hall.connect("other", "s")
    assert hall.say("other", "list_reviews")["reviews"] == []
    assert hall.say("other", "open_desk", room="room-1")["code"] == "unknown_room"
    assert hall.say("other", "close_round", round=1)["code"] == "unknown_room"


def test_an_assistant_who_comes_to_help_another_owner_leaves_the_desk_of_the_first() -> None:
    hall = with_assistant()
    hall.hosts["bracken"] = Host(id="bracken", name="T. Bracken", role="assistant", helps="yarrow")
    assert hall.say("helper", "close_round", round=1)["code"] == "unknown_room"
    gone: list[str] = []
    close_desks_of_the_gone(hall.seats, hall.host_of, gone.append)
    assert gone == ["helper"]


def test_the_desk_of_who_has_signed_out_is_closed_and_no_other() -> None:
    hall = with_assistant()
    gone: list[str] = []
    close_desks_of_the_gone(hall.seats, hall.host_of, gone.append)
    assert gone == []
    hall.hosts["bracken"] = None
    close_desks_of_the_gone(hall.seats, hall.host_of, gone.append)
    assert gone == ["helper"]


def test_a_desk_knows_the_name_of_its_host() -> None:
    hall = with_assistant()
    seat = hall.seats.seat_of("helper")
    assert seat is not None
    assert (seat.host_name, seat.host) == ("T. Bracken", HOST)
