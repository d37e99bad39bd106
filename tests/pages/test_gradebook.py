"""Gradebooks: equal to the marks, blank where nobody answered, for the host alone, no handle by a name."""

import csv
import io
from dataclasses import replace

import pytest
from flask.testing import FlaskClient

from quizroom.exchange.history_file import history_json
from quizroom.marking import marks_of_room
from quizroom.room.change_commands import RekeyItem
from quizroom.room.commands import (
    CloseRound,
    Command,
    EndReview,
    OpenDoor,
    OpenRound,
    RuleOnWords,
    StrikeItem,
)
from quizroom.room.credit_commands import AssignEntry, ClaimEntry, MissClaim
from quizroom.room.owner_commands import ForgetPlayer
from quizroom.room.state import Room
from quizroom.room.talk_commands import CloseAgain, LetTalk, OpenAgain
from quizroom.room.time_commands import SetTimeFactor, TakeTime, TakeTimeAlways
from quizroom.service.players import player_of
from quizroom.service.roster_ports import Roster, RosterRow
from tests.pages.test_rosters import proof_of
from tests.pages.web import Web, made
from tests.room.sample_items import one_best, pick_three, typed
from tests.room.samples import plan, preparation, says, seat, writes

ROWS = (
    RosterRow(id="00042", name="Ada Alder", section="Lab 1"),
    RosterRow(id="HH000102", name="=Bo", section=""),
    RosterRow(id="HH000103", name="Cem Clover", section="Lab 1"),
    RosterRow(id="HH000104", name="Dele Dock", section="Lab 2"),
)
HANDLES = ("Teal Talus", "Quartz Lunate", "Zinc Hamate", "Grey Cuboid")
"""Ada answers all, Bo wrong, Cem claims and answers nothing, Dele never comes; a fourth claims nobody."""


class Class:
    """A web with a class in a review for credit."""

    def __init__(self) -> None:
        """Lay out and play two rounds; the second is a set of three."""
        self.web: Web = made()
        self.roster: Roster = self.web.books.rosters.add("owner", "HHC-AN 140", ROWS)

    def play(self, room: str = "room-1", title: str = "Forearm", *, credit: bool = True) -> Room:
        """A review of that title, played to its end."""
        by = replace(plan(), title=title, roster=self.roster.id if credit else "")
        self.do(
            room, preparation(one_best(), pick_three(), typed(), by=by), OpenDoor(door_code=f"CD{room}"[:12])
        )
        for name, handle in zip(("ada", "bo", "cem", "dan"), HANDLES, strict=True):
            self.do(room, seat(name, handle))
        if credit:
            for name, entry in zip(("ada", "bo", "cem"), self.roster.entries, strict=False):
                self.do(room, ClaimEntry(player=name, entry=entry.entry))
        self.do(room, OpenRound(round=1), says("ada", "B"), says("bo", "A"), says("dan", "B"))
        self.do(room, CloseRound(round=1, by_host=True), OpenRound(round=2))
        self.do(room, says("ada", "A", "C", round_=2), says("bo", "B", round_=2))
        return self.do(room, EndReview())

    def do(self, room: str, *commands: Command) -> Room:
        """Carry these orders out."""
        return [self.web.rooms.handle(room, command) for command in commands][-1]

    def table(self, address: str, host: FlaskClient | None = None) -> list[list[str]]:
        """A file as Python's reader sees it."""
        answer = (host or self.web.host()).get(address)
        assert answer.status_code == 200, answer.text
        assert answer.headers["Content-Type"].startswith("text/csv")
        assert answer.headers["Cache-Control"] == "no-store"
        assert answer.data.endswith(b"\r\n")
        return list(csv.reader(io.StringIO(answer.data.decode("utf-8-sig"), newline="")))


@pytest.fixture
def klass() -> Class:
    return Class()


def test_the_gradebook_holds_the_marks_and_a_blank_is_no_zero(klass: Class) -> None:
    room = klass.play()
    totals = marks_of_room(room).totals
    assert totals["ada"].marks == pytest.approx(1.6667)
    assert klass.table("/desk/gradebook/room-1/gradebook.csv") == [
        ["id", "name", "section", "Forearm [2]"],
        ["00042", "Ada Alder", "Lab 1", "1.6667"],
        ["HH000102", "'=Bo", "", "0"],
        ["HH000103", "Cem Clover", "Lab 1", ""],
        ["HH000104", "Dele Dock", "Lab 2", ""],
    ]


def test_a_strike_changes_it_and_the_most_that_can_be_had(klass: Class) -> None:
    klass.play()
    klass.do("room-1", StrikeItem(round=2))
    table = klass.table("/desk/gradebook/room-1/gradebook.csv")
    assert [line[3] for line in table] == ["Forearm [1]", "1", "0", "", ""]


def test_a_byte_order_mark_stands_in_front_only_if_it_is_asked_for(klass: Class) -> None:
    klass.play()
    host = klass.web.host()
    plain, marked = (
        host.get(f"/desk/gradebook/room-1/gradebook.csv{query}").data for query in ("", "?bom=1")
    )
    assert marked == b"\xef\xbb\xbf" + plain


def test_several_reviews_stand_side_by_side_oldest_first(klass: Class) -> None:
    klass.play("room-1")
    klass.web.clock.move(3600)
    klass.play("room-2")
    klass.web.clock.move(3600)
    klass.do("room-3", preparation(by=replace(plan(), roster=klass.roster.id)))  # no round closed
    klass.do("room-4", preparation(by=replace(plan(), roster=klass.roster.id), host="somebody else"))
    address = f"/desk/rosters/{klass.roster.id}/gradebook.csv"
    assert klass.table(address)[0] == ["id", "name", "section", "Forearm [2]", "Forearm (2) [2]"]
    assert klass.table(address)[1][3:] == ["1.6667", "1.6667"]
    assert klass.table(f"{address}?room=room-2")[0][3:] == ["Forearm [2]"]
    none = klass.web.host().get(f"{address}?room=room-3")
    assert (none.status_code, "No round has been closed yet" in none.text) == (400, True)


def test_the_full_record_holds_each_response_by_id_and_no_handle(klass: Class) -> None:
    room = klass.play()
    head, *lines = klass.table("/desk/gradebook/room-1/record.csv")
    rows = [dict(zip(head, line, strict=True)) for line in lines]
    assert [(row["seat"], row["id"], row["round"], row["right"]) for row in rows] == [
        ("1", "00042", "1", "yes"),
        ("2", "HH000102", "1", "no"),
        ("4", "", "1", "yes"),
        ("1", "00042", "2", "no"),
        ("2", "HH000102", "2", "no"),
    ]
    item = room.rounds[1].item
    assert rows[3]["item id"] == item.id
    assert rows[3]["fact id"] == " | ".join(item.facts)
    assert rows[3]["options"].split(" | ") == [f"{one.letter}: {one.text}" for one in item.options]
    assert (rows[3]["answer"], rows[3]["mark"], rows[3]["t_ms"], rows[3]["attempt"]) == (
        "A | C",
        "0.6667",
        "0",
        "1",
    )
    assert {row["variant of key used"] for row in rows} == {"as dealt"}
    text = str(lines)
    assert not any(handle in text for handle in HANDLES)


def test_a_struck_item_and_ruled_words_say_by_which_key_they_count(klass: Class) -> None:
    by = replace(plan(), roster="")
    klass.do("room-1", preparation(one_best(), typed(), by=by), OpenDoor(door_code="CDFHJ"), seat("ada"))
    klass.do(
        "room-1", OpenRound(round=1), says("ada", "B"), CloseRound(round=1, by_host=True), StrikeItem(round=1)
    )
    klass.do(
        "room-1", OpenRound(round=2), writes("ada", "my word", round_=2), CloseRound(round=2, by_host=True)
    )
    klass.do("room-1", RuleOnWords(round=2, words="my word", accept=True))
    head, *lines = klass.table("/desk/gradebook/room-1/record.csv")
    rows = [dict(zip(head, line, strict=True)) for line in lines]
    assert [(row["variant of key used"], row["right"], row["mark"]) for row in rows] == [
        ("struck", "", ""),
        ("words ruled", "yes", "1"),
    ]
    assert {row["handle"] for row in rows} == {"Ada"}


def test_an_item_that_was_keyed_anew_says_so_and_counts_by_the_new_key(klass: Class) -> None:
    klass.play()
    klass.do("room-1", RekeyItem(round=1, key=("A",), reason="The list says so.", by="owner"))
    head, *lines = klass.table("/desk/gradebook/room-1/record.csv")
    rows = [dict(zip(head, line, strict=True)) for line in lines]
    assert [(row["variant of key used"], row["key"], row["right"]) for row in rows[:2]] == [
        ("keyed anew", "A", "no"),
        ("keyed anew", "A", "yes"),
    ]
    assert rows[3]["variant of key used"] == "as dealt"
    assert [line[3] for line in klass.table("/desk/gradebook/room-1/gradebook.csv")[1:3]] == ["0.6667", "1"]


def test_second_answers_follow_as_a_second_attempt_and_change_no_marks(klass: Class) -> None:
    by = replace(plan(), roster=klass.roster.id, holds_results=True)
    klass.do("room-1", preparation(one_best(), by=by), OpenDoor(door_code="CDFHJ"), seat("ada"))
    klass.do("room-1", ClaimEntry(player="ada", entry=klass.roster.entries[0].entry))
    klass.do(
        "room-1", OpenRound(round=1), says("ada", "A"), CloseRound(round=1, by_host=True), LetTalk(round=1)
    )
    klass.do("room-1", OpenAgain(round=1, by_host=True))
    klass.web.clock.move(2.5)
    klass.do("room-1", replace(says("ada", "B"), again=True), CloseAgain(round=1, by_host=True))
    klass.do("room-1", EndReview())
    head, *lines = klass.table("/desk/gradebook/room-1/record.csv")
    rows = [dict(zip(head, line, strict=True)) for line in lines]
    kept = ("answer", "right", "attempt", "phase", "t_ms")
    assert [tuple(row[name] for name in kept) for row in rows] == [
        ("A", "no", "1", "answering", "0"),
        ("B", "yes", "2", "answering again", "2500"),
    ]
    assert klass.table("/desk/gradebook/room-1/gradebook.csv")[1][3] == "0"


def test_who_had_more_time_stands_in_the_record_only_if_it_is_asked_for(klass: Class) -> None:
    by = replace(plan(), holds_results=True, players_take_time=True)
    klass.do("room-1", preparation(one_best(), one_best("2"), by=by), OpenDoor(door_code="CDFHJ"))
    klass.do("room-1", *(seat(name) for name in ("ada", "bo", "cem")))
    klass.do("room-1", SetTimeFactor(player="ada", factor_percent=150), OpenRound(round=1))
    klass.do("room-1", TakeTime(player="bo", round=1, time=1, again=False))
    klass.do("room-1", says("ada", "A"), says("bo", "B"), says("cem", "C"), CloseRound(round=1, by_host=True))
    klass.web.clock.move(60)
    klass.do("room-1", OpenRound(round=2, ends_own_time=True), TakeTimeAlways(player="cem", on=True))
    klass.do("room-1", says("bo", "B", round_=2), says("cem", "C", round_=2), EndReview(ends_own_time=True))
    plain, told = (klass.table(f"/desk/gradebook/room-1/record.csv{query}") for query in ("", "?time=1"))
    assert [line[: len(plain[0])] for line in told] == plain
    assert [(line[1], line[2], *line[len(plain[0]) :]) for line in told] == [
        ("handle", "round", "time factor", "took time"),
        ("Ada", "1", "1.5", "no"),
        ("Bo", "1", "1", "yes"),
        ("Cem", "1", "1", "no"),
        ("Bo", "2", "1", "no"),
        ("Cem", "2", "1", "yes"),
    ]
    assert "record.csv?time=1" in klass.web.host().get("/desk/gradebook/room-1").text


def test_the_players_own_export_holds_the_id_they_claimed_and_no_name(klass: Class) -> None:
    key = "abcdefghijklmn27"
    klass.do("room-1", preparation(by=replace(plan(), roster=klass.roster.id)), OpenDoor(door_code="CDFHJ"))
    klass.do("room-1", replace(seat("ada"), owner=player_of(key)))
    klass.do("room-1", ClaimEntry(player="ada", entry=klass.roster.entries[0].entry))
    past = klass.web.mine.histories.of(player_of(key)).reviews[0]
    assert (past.for_credit, past.institutional_id) == (True, "00042")
    written = history_json(klass.web.mine.histories.of(player_of(key)), klass.web.clock.now())
    assert b"00042" in written
    assert b"Ada Alder" not in written
    klass.web.mine.forgetting.forget_player(player_of(key))
    assert klass.web.rooms.room("room-1").claims == {}


def test_without_credit_there_is_no_gradebook_but_the_record_by_handle(klass: Class) -> None:
    klass.play(credit=False)
    host = klass.web.host()
    refused = host.get("/desk/gradebook/room-1/gradebook.csv")
    assert (refused.status_code, "This review is not for credit" in refused.text) == (400, True)
    assert "This review is not for credit" in host.get("/desk/gradebook/room-1").text
    head, *lines = klass.table("/desk/gradebook/room-1/record.csv")
    assert head[:2] == ["seat", "handle"]
    assert "name" not in head
    assert {line[1] for line in lines} == {"Teal Talus", "Quartz Lunate", "Grey Cuboid"}


def test_the_host_sees_who_sat_where_undoes_and_assigns(klass: Class) -> None:
    room = klass.play()
    klass.do("room-1", MissClaim(player="dan", order="m"))
    host = klass.web.host()
    page = host.get("/desk/gradebook/room-1").text
    assert "3 of 4 have claimed a seat" in page
    assert "Grey Cuboid (1 of 5 wrong ids)" in page
    form = {"proof": proof_of(host), "player": "dan", "entry": klass.roster.entries[3].entry}
    assert host.post("/desk/gradebook/room-1", data=form).location == "/desk/gradebook/room-1"
    assert klass.table("/desk/gradebook/room-1/gradebook.csv")[4][3] == "1"
    taken = host.post("/desk/gradebook/room-1", data={**form, "player": "ada"})
    assert (taken.status_code, "Another seat has been claimed" in taken.text) == (400, True)
    host.post("/desk/gradebook/room-1", data={**form, "entry": ""})
    assert klass.table("/desk/gradebook/room-1/gradebook.csv")[4][3] == ""
    strange = host.post("/desk/gradebook/room-1", data={**form, "entry": "made up"})
    assert (strange.status_code, "not on the roster any more" in strange.text) == (400, True)
    assert klass.web.rooms.room("room-1").claims == room.claims
    assert host.post("/desk/gradebook/room-1", data={**form, "proof": "x"}).status_code == 403


def test_a_review_becomes_one_for_credit_until_its_first_round_opens(klass: Class) -> None:
    klass.do("room-1", preparation(), OpenDoor(door_code="CDFHJ"), seat("ada"))
    host = klass.web.host()
    assert "By which class roster" in host.get("/desk/gradebook/room-1").text
    form = {"proof": proof_of(host), "roster": klass.roster.id}
    assert host.post("/desk/gradebook/room-1/roster", data=form).status_code == 303
    assert klass.web.rooms.room("room-1").plan.roster == klass.roster.id
    assert host.post("/desk/gradebook/room-1/roster", data={**form, "roster": "gone"}).status_code == 404
    klass.do("room-1", OpenRound(round=1))
    late = host.post("/desk/gradebook/room-1/roster", data={**form, "roster": ""})
    assert (late.status_code, "A round has been opened" in late.text) == (400, True)
    assert "By which class roster" not in host.get("/desk/gradebook/room-1").text


def test_whoever_wants_to_be_forgotten_leaves_the_gradebook(klass: Class) -> None:
    klass.play()
    klass.do("room-1", ForgetPlayer(player="ada"))
    assert klass.table("/desk/gradebook/room-1/gradebook.csv")[1] == ["00042", "Ada Alder", "Lab 1", ""]
    page = klass.web.host().get("/desk/gradebook/room-1").text
    assert "Former player" not in page


def test_a_deleted_roster_takes_the_gradebook_with_it_and_who_left_it_is_named(klass: Class) -> None:
    klass.play()
    klass.web.books.rosters.change(klass.roster, "HHC-AN 140", ROWS[1:])
    page = klass.web.host().get("/desk/gradebook/room-1").text
    assert "Teal Talus (claimed somebody who has left the roster)" in page
    klass.web.books.forget_roster(klass.roster.id)
    gone = klass.web.host().get("/desk/gradebook/room-1/gradebook.csv")
    assert (gone.status_code, "has been deleted" in gone.text) == (400, True)
    assert [line[1:4] for line in klass.table("/desk/gradebook/room-1/record.csv")[1:]] == [["", "", ""]] * 5


@pytest.mark.parametrize("path", ["", "/gradebook.csv", "/record.csv"])
def test_it_is_for_the_host_of_that_review_alone(klass: Class, path: str) -> None:
    klass.do("room-9", preparation(host="somebody else"))
    klass.play()
    assert klass.web.browser().get(f"/desk/gradebook/room-1{path}").status_code == 403
    assert klass.web.host().get(f"/desk/gradebook/room-9{path}").status_code == 404
    assert klass.web.host().get(f"/desk/gradebook/gone{path}").status_code == 404


def test_an_undone_claim_goes_to_whoever_it_belongs_to(klass: Class) -> None:
    klass.play()
    first = klass.roster.entries[0].entry
    klass.do("room-1", AssignEntry(player="ada", entry=""), ClaimEntry(player="dan", entry=first))
    assert klass.table("/desk/gradebook/room-1/gradebook.csv")[1][3] == "1"
