"""Reviews for credit over the wire: players claim who they are, and no message tells anybody's name or id."""

from dataclasses import replace
from typing import Any

import pytest

from quizroom.realtime import wire_json
from quizroom.room.credit import MOST_MISSED_CLAIMS
from quizroom.room.credit_commands import AssignEntry
from quizroom.service.roster_ports import Roster, RosterRow
from quizroom.storage.event_codec import write_event
from tests.realtime.hall import HOST, Hall, enter
from tests.room.samples import plan, preparation

ROWS = (
    RosterRow(id="HH000101", name="Ada Alder", section="Lab Quince"),
    RosterRow(id="00042", name="Zebedee Juniper", section="Lab Quince"),
    RosterRow(id="HH000103", name="Cem Clover", section="Lab Rowan"),
)


class CreditHall(Hall):
    """A hall whose every message is captured, with a review for credit."""

    def __init__(self, *players: str) -> None:
        """Lay the review out, open its door, and let these players in."""
        super().__init__()
        self.ids = (f"{number:08x}" for number in range(0xC0FFEE, 0xC1FFEE))
        self.heard: list[tuple[str, str]] = []
        self.roster: Roster = self.rosters.add(HOST, "HHC-AN 140", ROWS)
        by = replace(plan(), roster=self.roster.id)
        self.rooms.handle("room-1", preparation(by=by, host=HOST))
        self.connect("host", HOST)
        self.say("host", "open_desk", room="room-1")
        self.say("host", "open_door")
        self.connect("wall")
        self.say("wall", "watch_wall", door_code=self.room().door_code)
        for player in players:
            enter(self, player)

    def say(self, sid: str, kind: str, **fields: Any) -> dict[str, Any]:
        """As any hall, remembering the reply and all that is told of it."""
        reply = super().say(sid, kind, **fields)
        self.heard.append((sid, wire_json.dumps(reply)))
        self.broadcast.run_once(with_tallies=True)
        sent, self.lines.sent = self.lines.sent, []
        self.heard += [(to, wire_json.dumps(data)) for _, data, to in sent]
        return reply

    def claim(self, sid: str, institutional_id: str, order: str = "") -> dict[str, Any]:
        """Somebody says which id is theirs."""
        fields = {"id": order} if order else {}
        return self.say(sid, "claim_identity", institutional_id=institutional_id, **fields)

    def entry(self, row: int) -> str:
        """The opaque id of a row."""
        return self.roster.entries[row].entry


def test_a_seat_claims_its_id_and_is_told_so() -> None:
    hall = CreditHall("ada", "bo")
    reply = hall.claim("ada", " hh 000101")
    assert reply["result"] == "done", reply
    assert reply["own"]["claim"] == {"claimed": True, "tries_left": MOST_MISSED_CLAIMS}
    assert reply["public"]["for_credit"] is True
    assert hall.room().claims == {hall_player(hall): hall.entry(0)}
    assert hall.say("host", "show_view")["desk"]["credit"] == {"claimed": 1, "unclaimed": 1}


def hall_player(hall: Hall) -> str:
    """The id of the first who came in."""
    return next(iter(hall.room().players))


def test_wrong_taken_and_too_many_ids_are_refused_in_words() -> None:
    hall = CreditHall("ada", "bo")
    hall.claim("ada", "HH000101")
    assert hall.claim("bo", "HH000101")["code"] == "id_is_taken"
    assert hall.claim("ada", "00042")["code"] == "has_claimed"
    for number in range(MOST_MISSED_CLAIMS):
        reply = hall.claim("bo", "42", f"try {number}")
        assert (reply["code"], "Type it as it stands" in reply["text"]) == ("unknown_id", True)
        assert reply["own"]["claim"] == {"claimed": False, "tries_left": MOST_MISSED_CLAIMS - number - 1}
        hall.steady_s += 10
    assert hall.claim("bo", "00042", "last")["code"] == "no_tries_left"


def test_who_tries_ids_from_many_seats_is_kept_waiting() -> None:
    hall = CreditHall("ada")
    codes = [hall.claim("ada", f"HH{number}", f"m{number}")["code"] for number in range(8)]
    assert "slow_down" in codes


def test_what_the_host_undoes_or_assigns_reaches_that_seat() -> None:
    hall = CreditHall("ada")
    ada = hall_player(hall)
    hall.claim("ada", "HH000101")
    for entry, claimed in (("", False), (hall.entry(1), True)):
        hall.rooms.handle("room-1", AssignEntry(player=ada, entry=entry))
        hall.broadcast.run_once(with_tallies=False)
        told = [data for event, data, to in hall.lines.sent if (event, to) == ("own", "ada")]
        assert told[-1]["claim"]["claimed"] is claimed
        hall.lines.sent.clear()


def test_a_claim_itself_is_told_to_no_other_seat() -> None:
    hall = CreditHall("ada", "bo")
    hall.heard.clear()
    hall.claim("ada", "HH000101")
    assert {to for to, _ in hall.heard} <= {"ada", "public room-1", "desk room-1"}
    public = [wire_json.loads(text) for to, text in hall.heard if to == "public room-1"]
    assert all(set(told) == {"version", "phase", "round", "players", "answered"} for told in public)


@pytest.mark.parametrize("sid", ["wall", "host"])
def test_only_seats_claim(sid: str) -> None:
    assert CreditHall("ada").claim(sid, "HH000101")["code"] == "no_seat"


def test_nothing_is_claimed_where_nothing_is_for_credit() -> None:
    hall = Hall()
    hall.rooms.handle("room-1", preparation(host=HOST))
    hall.connect("host", HOST)
    hall.say("host", "open_desk", room="room-1")
    hall.say("host", "open_door")
    enter(hall, "ada")
    reply = hall.say("ada", "claim_identity", institutional_id="HH000101")
    assert reply["code"] == "not_for_credit"
    views = hall.say("ada", "show_view")
    assert (views["own"]["claim"], views["public"]["for_credit"]) == (None, False)
    assert "practice, not a grade" in views["public"]["cautions"][2]


def test_a_host_lays_out_for_credit_by_a_roster_of_their_own_alone() -> None:
    hall = CreditHall()
    assert hall.say("host", "prepare_review", id="mine", roster=hall.roster.id)["result"] == "done"
    strangers = hall.rosters.add("somebody else", "Theirs", ROWS)
    for roster in (strangers.id, "gone"):
        reply = hall.say("host", "prepare_review", id=f"not {roster}", roster=roster)
        assert (reply["result"], reply["code"]) == ("refused", "unknown_roster")


def test_no_message_to_anybody_holds_a_name_an_id_or_an_entry() -> None:
    hall = CreditHall("ada", "bo", "cem")
    hall.claim("ada", "HH000101")
    hall.claim("bo", "00042")
    hall.claim("cem", "HH000101", "wrong one")
    hall.claim("cem", "HH999999", "no one")
    hall.rooms.handle("room-1", AssignEntry(player=list(hall.room().players)[2], entry=hall.entry(2)))
    hall.say("host", "show_standings", on=True)
    for number in (1, 2):
        hall.say("host", "open_round", round=number)
        hall.say("ada", "submit_answer", round=number, choice=["B"], id=f"a{number}")
        hall.say("host", "close_round", round=number)
        hall.say("host", "show_record", round=number)
        for sid in ("host", "wall", "ada", "bo", "cem"):
            hall.say(sid, "show_view")
    hall.say("ada", "resume_seat", door_code=hall.room().door_code, seat_key="key of ada")
    hall.say("host", "list_reviews")
    hall.say("host", "end_review", round=2)
    assert len(hall.heard) > 60
    secrets = {text for row in ROWS for text in (row.id, row.name, row.name.split()[1], row.section)}
    secrets |= {entry.entry for entry in hall.roster.entries}
    assert [(to, secret) for to, text in hall.heard for secret in secrets if secret in text] == []


def test_the_log_holds_no_name_and_no_id() -> None:
    hall = CreditHall("ada")
    hall.claim("ada", "HH999999", "wrong")
    hall.claim("ada", "HH000101")
    logged = b"".join(write_event(event) for event in hall.log.read("room-1"))
    assert hall.entry(0).encode() in logged
    for text in ("HH000101", "HH999999", "Ada Alder", "Quince"):
        assert text.encode() not in logged
