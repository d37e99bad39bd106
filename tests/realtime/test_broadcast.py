"""Who is told what, and when."""

import time

import pytest

from quizroom.room.commands import RemovePlayer, ShowRecord, ShowStandings
from tests.realtime.hall import Hall, enter, hall_with
from tests.room.samples import CLOSE

VIEWS = [("public", "public room-1"), ("desk", "desk room-1")]
OWN = [("own", "ada"), ("own", "bo")]


def test_a_change_of_phase_is_told_at_once_to_all() -> None:
    hall = hall_with("ada", "bo", round_open=False)
    hall.say("host", "open_round")
    assert hall.tell() == VIEWS
    hall.say("host", "close_round")
    assert hall.tell() == VIEWS + OWN


def test_answers_and_arrivals_are_only_counted_and_wait_for_their_turn() -> None:
    hall = hall_with("ada", "bo")
    hall.say("ada", "submit_answer", choice=["B"])
    hall.say("bo", "submit_answer", choice=["C"])
    enter(hall, "cem")
    assert hall.tell() == []
    hall.broadcast.run_once(with_tallies=True)
    (tally, _) = hall.lines.sent
    told = {"version": hall.room().version, "phase": "answering", "round": 1, "players": 3, "answered": 2}
    assert tally == ("tally", told, "public room-1")
    assert hall.lines.taken() == [("tally", "public room-1"), ("desk", "desk room-1")]


def test_what_has_been_told_is_not_told_again() -> None:
    hall = hall_with("ada")
    hall.say("ada", "submit_answer", choice=["B"])
    hall.tell(with_tallies=True)
    hall.say("ada", "submit_answer", choice=["B"])
    assert hall.tell(with_tallies=True) == []


def test_where_a_room_stands_is_repeated_for_whoever_missed_it() -> None:
    hall = hall_with("ada")
    hall.broadcast.remind([hall.room()])
    assert [(event, data["phase"], data["round"]) for event, data, _ in hall.lines.sent] == [
        ("tally", "answering", 1)
    ]
    hall.lines.taken()
    hall.say("host", "end_review")
    hall.tell()
    hall.broadcast.remind([hall.room()])  # the last view may be missed as well as any other
    assert hall.lines.sent[-1][1]["phase"] == "finished"


def test_a_view_takes_the_counts_along() -> None:
    hall = hall_with("ada")
    hall.say("ada", "submit_answer", choice=["B"])
    hall.say("host", "pause_round")
    hall.broadcast.run_once(with_tallies=False)
    assert hall.lines.sent[0][1]["answered"] == 1
    hall.lines.taken()
    assert hall.tell(with_tallies=True) == []


@pytest.mark.parametrize(
    "order",
    [ShowRecord(round=1), ShowStandings(on=True), RemovePlayer(player="p2")],
    ids=lambda o: type(o).__name__,
)
def test_what_changes_the_own_view_sends_it_to_every_seat(order: ShowRecord) -> None:
    hall = hall_with("ada", "bo")
    hall.rooms.handle("room-1", CLOSE)
    hall.tell()
    hall.rooms.handle("room-1", order)
    assert hall.tell() == VIEWS + OWN


def test_each_seat_gets_its_own_view_and_a_removed_one_learns_it() -> None:
    hall = hall_with("ada", "bo")
    hall.say("ada", "submit_answer", choice=["B"])
    hall.rooms.handle("room-1", CLOSE)
    hall.rooms.handle("room-1", RemovePlayer(player="p2"))
    hall.broadcast.run_once(with_tallies=False)
    owns = {to: data for event, data, to in hall.lines.sent if event == "own"}
    assert (owns["ada"]["player"], owns["ada"]["result"]["verdict"]) == ("p1", "right")
    assert (owns["bo"]["removed"], owns["bo"]["result"]) == (True, None)


def test_without_a_desk_no_desk_view_is_made() -> None:
    hall = hall_with("ada")
    hall.gateway.disconnect("host")
    hall.rooms.handle("room-1", CLOSE)
    assert hall.tell() == [VIEWS[0], OWN[0]]


def test_a_room_that_cannot_be_told_does_not_silence_the_others() -> None:
    hall = hall_with("ada")
    second = hall.say("host", "prepare_review")["desk"]["room"]
    hall.lines.broken_to = "public room-1"
    hall.rooms.handle("room-1", CLOSE)
    hall.say("host", "open_door")
    assert ("public", f"public {second}") in hall.tell()


def test_an_earlier_room_is_no_longer_heard_after_going_to_another() -> None:
    hall = hall_with("ada")
    hall.say("host", "prepare_review")
    hall.say("host", "open_door")
    (code,) = {room.door_code for room in hall.rooms.live()} - {hall.room().door_code}
    assert hall.say("ada", "enter_seat", door_code=code)["result"] == "done"
    assert "ada" not in hall.lines.members["public room-1"]
    hall.rooms.handle("room-1", CLOSE)
    assert ("own", "ada") not in hall.tell()


def test_waiting_ends_when_something_changes_or_the_time_is_over() -> None:
    hall = hall_with("ada")
    hall.broadcast.wait(0.01)
    assert waited(hall, 0.05) >= 0.04
    hall.say("ada", "submit_answer", choice=["B"])
    assert waited(hall, 30) < 10


def waited(hall: Hall, seconds: float) -> float:
    begun = time.monotonic()
    hall.broadcast.wait(seconds)
    return time.monotonic() - begun


def test_rounds_marked_before_are_not_marked_again() -> None:
    hall = hall_with("ada")
    hall.say("ada", "submit_answer", choice=["B"])
    hall.rooms.handle("room-1", CLOSE)
    first = hall.broadcast.marks(hall.room())
    hall.rooms.handle("room-1", ShowRecord(round=1))
    assert hall.broadcast.marks(hall.room()).rounds[0] is first.rounds[0]
