"""Flags and changed keys on the wire: who is told, and that nobody else may order them."""

import pytest

from tests.realtime.hall import hall_with


def test_a_flag_is_told_to_whoever_put_it_up_and_to_the_desk_and_the_others_hear_nothing() -> None:
    hall = hall_with("ada", "bo")
    reply = hall.say("ada", "flag_item", text="Is it not the radial nerve?")
    assert reply["own"]["flag"] == {"round": 1, "text": "Is it not the radial nerve?"}
    assert hall.tell() == []
    hall.broadcast.run_once(with_tallies=True)
    (tally, desk) = hall.lines.sent
    assert (tally[0], desk[0]) == ("tally", "desk")
    assert "radial" not in str(tally)
    flags = desk[1]["items"][0]["flags"]
    assert flags == {
        "up": 1,
        "waiting": 1,
        "texts": [{"text": "Is it not the radial nerve?", "settled": False, "asked": ""}],
    }
    hall.lines.taken()
    assert hall.say("ada", "unflag_item")["own"]["flag"] is None


def test_a_changed_key_is_told_to_all_at_once_with_everybodys_own_result() -> None:
    hall = hall_with("ada")
    hall.say("ada", "submit_answer", choice=["A"])
    hall.say("host", "close_round")
    hall.tell()
    assert hall.say("host", "rekey_item", key=["A", "B"])["result"] == "done"
    assert {event for event, _ in hall.tell()} == {"public", "desk", "own"}
    assert hall.say("ada", "show_view")["own"]["result"]["verdict"] == "right"
    changes = hall.say("host", "show_view")["desk"]["changes"]
    assert [(change["kind"], change["by"]) for change in changes] == [("rekeyed", "Owner")]
    assert hall.say("host", "restore_key")["result"] == "done"
    assert hall.say("ada", "show_view")["own"]["result"]["verdict"] == "wrong"


@pytest.mark.parametrize(
    "who,kind,code",
    [
        ("ada", "rekey_item", "not_host"),
        ("ada", "restore_key", "not_host"),
        ("ada", "settle_flags", "not_host"),
        ("host", "flag_item", "no_seat"),
        ("host", "unflag_item", "no_seat"),
    ],
)
def test_each_order_is_for_hosts_or_for_seats(who: str, kind: str, code: str) -> None:
    reply = hall_with("ada").say(who, kind)
    assert (reply["result"], reply["code"]) == ("refused", code)
