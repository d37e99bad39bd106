"""Orders are decided, committed, and only then answered and told."""

import pytest

from quizroom.room.commands import EndReview, OpenRound
from quizroom.room.events import ReviewPrepared, RoundClosed
from quizroom.room.refusals import Refused
from quizroom.service.rooms import Change, Rooms, UnknownRoom
from tests.room.samples import CLOSE, preparation, says
from tests.service.fakes import Desk, SetClock, WatchedLog, seated


def test_an_order_gives_the_room_after_it_and_the_log_says_the_same() -> None:
    desk = seated()
    room = desk.rooms.handle("room-1", says("ada", "B"))
    assert room.rounds[0].answers["ada"].choice == ("B",)
    assert room == desk.rooms.room("room-1") == desk.folded()


def test_a_review_is_laid_out_in_a_room_of_its_own_and_only_once() -> None:
    desk = Desk()
    assert desk.rooms.handle("a", preparation()).id == "a"
    assert desk.rooms.handle("b", preparation()).version == 1
    with pytest.raises(Refused, match="wrong_phase"):
        desk.rooms.handle("a", preparation())
    assert [type(event) for event in desk.logged("a")] == [ReviewPrepared]


def test_a_room_that_nobody_has_laid_out_is_unknown() -> None:
    desk = Desk()
    assert desk.rooms.find("nowhere") is None
    with pytest.raises(UnknownRoom):
        desk.rooms.room("nowhere")
    with pytest.raises(UnknownRoom):
        desk.rooms.handle("nowhere", CLOSE)


def test_a_refused_order_leaves_no_trace() -> None:
    desk = seated()
    told, logged = list(desk.told), desk.logged()
    with pytest.raises(Refused, match="round_is_open"):
        desk.rooms.handle("room-1", OpenRound(round=2))
    assert (desk.told, desk.logged()) == (told, logged)


def test_an_order_carried_out_before_is_answered_without_a_commit() -> None:
    desk = seated(log := WatchedLog())
    desk.rooms.handle("room-1", says("ada", "B"))
    turns = len(log.turns)
    assert desk.rooms.handle("room-1", says("ada", "B")) == desk.rooms.room("room-1")
    assert len(log.turns) == turns


def test_changes_are_told_after_they_are_committed() -> None:
    log, seen = WatchedLog(), []

    def note(change: Change) -> None:
        seen.append((change.events, log.read("room-1")[-len(change.events) :]))

    rooms = Rooms(log=log, clock=SetClock(), on_change=note)
    rooms.handle("room-1", preparation())
    rooms.handle("room-1", EndReview())
    assert len(seen) == 2
    assert all(told == logged for told, logged in seen)


def test_an_order_of_two_events_is_one_turn_and_one_change() -> None:
    desk = seated(log := WatchedLog())
    desk.rooms.handle("room-1", EndReview())
    assert log.turns[-1] == 2
    assert [type(event) for event in desk.told[-1].events][:1] == [RoundClosed]
    assert desk.told[-1].room.phase == "finished"


def test_a_fresh_start_finds_every_room_as_it_was() -> None:
    desk = seated()
    desk.rooms.handle("room-1", says("ada", "B"))
    again = Desk(desk.log)
    assert again.rooms.live() == ()
    assert again.rooms.room("room-1") == desk.rooms.room("room-1")
    assert again.rooms.live() == desk.rooms.live()


def test_a_forgotten_room_is_read_again_when_it_is_needed() -> None:
    desk = seated()
    before = desk.rooms.room("room-1")
    desk.rooms.forget("room-1")
    assert desk.rooms.live() == ()
    assert desk.rooms.handle("room-1", says("bo", "A")).version == before.version + 1


def test_a_door_leads_to_the_room_in_memory_until_its_review_ends() -> None:
    desk = seated()
    code = desk.rooms.room("room-1").door_code
    assert code
    assert desk.rooms.live_behind(code) == "room-1" == desk.log.room_of_door(code)
    assert desk.rooms.live_behind("") is None
    assert desk.rooms.live_behind(f"{code}X") is None
    desk.rooms.handle("room-1", EndReview())
    assert desk.rooms.live_behind(code) is None
    assert desk.log.room_of_door(code) == "room-1"
