"""Several programs over one log: what one of them refuses or calls done is what the log says, not its own
memory.
"""

import time
from collections.abc import Callable, Sequence
from concurrent.futures import ThreadPoolExecutor

import pytest

from quizroom.room.commands import CloseRound, OpenDoor, OpenRound, ShowRecord
from quizroom.room.events import AnswerAccepted, Event, RoundClosed
from quizroom.room.refusals import Refused
from quizroom.service.ports import Entry, EventLog, VersionTaken
from quizroom.storage.memory import MemoryEventLog
from tests.room.samples import preparation, says
from tests.service.courses import plan_of
from tests.service.dealing import reviews
from tests.service.fakes import Desk, WatchedLog, seated


def beside(desk: Desk) -> Desk:
    """Another program over the same log, which has the room as it now is."""
    other = Desk(desk.log, shared=True)
    other.rooms.room("room-1")
    return other


def two(log: EventLog | None = None) -> tuple[Desk, Desk]:
    one = seated(log)
    return beside(one), beside(one)


def test_an_answer_to_a_round_that_another_program_has_just_opened_is_taken() -> None:
    one, other = two()
    for order in (CloseRound(round=1, by_host=True), ShowRecord(round=1), OpenRound(round=2)):
        one.rooms.handle("room-1", order)
    room = other.rooms.handle("room-1", says("ada", "B", "C", "D", round_=2))
    assert set(room.rounds[1].answers) == {"ada"}


def test_what_would_be_done_already_by_old_knowledge_is_done_again_if_the_log_says_otherwise() -> None:
    one, other = two()
    other.rooms.handle("room-1", says("ada", "B"))
    one.rooms.handle("room-1", says("ada", "C"))
    room = other.rooms.handle("room-1", says("ada", "B"))
    assert room.rounds[0].answers["ada"].choice == ("B",)
    assert [type(event) for event in one.logged()].count(AnswerAccepted) == 3


def test_a_refusal_stands_if_the_log_has_no_news() -> None:
    one, _ = two(log := WatchedLog())
    with pytest.raises(Refused, match="round_is_open"):
        one.rooms.handle("room-1", OpenRound(round=2))
    assert len(log.turns) == 5


def test_the_own_audience_is_told_of_what_others_wrote_and_that_it_was_theirs() -> None:
    one, other = two()
    one.rooms.handle("room-1", says("ada", "B"))
    other.rooms.handle("room-1", says("bo", "A"))
    assert [(change.ours, len(change.events)) for change in other.told] == [(False, 1), (True, 1)]
    assert [change.ours for change in one.told] == [True]
    one.rooms.catch_up("room-1")
    one.rooms.catch_up("room-1")
    assert [change.ours for change in one.told] == [True, False]
    assert one.rooms.room("room-1") == other.rooms.room("room-1") == one.folded()


def test_a_fresh_look_sees_what_others_wrote_and_a_plain_look_does_not() -> None:
    one, other = two()
    one.rooms.handle("room-1", says("ada", "B"))
    assert other.rooms.room("room-1").rounds[0].answers == {}
    assert set(other.rooms.fresh("room-1").rounds[0].answers) == {"ada"}
    assert [change.ours for change in other.told] == [False]


def test_a_room_that_is_not_here_is_not_read_on() -> None:
    one, other = two()
    other.rooms.forget("room-1")
    one.rooms.handle("room-1", says("ada", "B"))
    other.rooms.catch_up("room-1")
    assert (other.rooms.live(), other.told) == ((), [])


class Slow(MemoryEventLog):
    """A log that takes its time to read, and counts."""

    reads = 0

    def read(self, room: str, after: int = 0, most: int | None = None) -> tuple[Event, ...]:
        self.reads += 1
        time.sleep(0.05)
        return super().read(room, after, most)


def test_a_class_that_comes_over_together_wakes_its_room_once() -> None:
    one = seated(log := Slow())
    other = Desk(log, shared=True)
    log.reads = 0
    with ThreadPoolExecutor(20) as players:
        found = list(players.map(lambda _: other.rooms.find("room-1"), range(20)))
    assert log.reads == 1
    assert {id(room) for room in found} == {id(other.rooms.room("room-1"))}
    assert found[0] == one.rooms.room("room-1")


class Interrupting(MemoryEventLog):
    """A log in which somebody else writes just before an append, once."""

    interrupt: Callable[[], object] | None = None

    def append(self, entries: Sequence[Entry]) -> None:
        interrupt, self.interrupt = self.interrupt, None
        if interrupt is not None:
            interrupt()
        super().append(entries)


def test_the_same_review_laid_out_by_two_programs_at_once_is_one() -> None:
    log = Interrupting()
    one, other = Desk(log, shared=True), Desk(log, shared=True)
    log.interrupt = lambda: reviews(other).prepare(plan_of(), host="owner", order="m1")
    room = reviews(one).prepare(plan_of(), host="owner", order="m1")
    assert room == other.rooms.room(room.id)
    assert room.version == len(log.read(room.id)) == 1


def test_when_both_alarms_ring_the_round_is_closed_once() -> None:
    log = Interrupting()
    one, other = two(log)
    for desk in (one, other):
        desk.clock.move(60)
    log.interrupt = lambda: other.rooms.handle("room-1", CloseRound(round=1, by_host=False))
    one.rooms.handle("room-1", CloseRound(round=1, by_host=False))
    assert [type(event) for event in log.read("room-1")].count(RoundClosed) == 1


def test_the_time_of_receipt_counts_however_long_the_turn_takes() -> None:
    desk = seated(log := Interrupting())
    desk.clock.move(30)
    log.interrupt = lambda: overtake(desk)
    room = desk.rooms.handle("room-1", says("ada", "B"))
    assert set(room.rounds[0].answers) == {"ada", "bo"}


def overtake(desk: Desk) -> None:
    """Let a minute pass in which another program stores an answer."""
    desk.clock.move(60)
    other = Desk(desk.log)
    other.rooms.handle("room-1", says("bo", "A"))


class Losing(MemoryEventLog):
    """A log in which somebody else is faster so many times."""

    losses = 30

    def append(self, entries: Sequence[Entry]) -> None:
        if self.losses and entries[0].version > 1:
            self.losses -= 1
            raise VersionTaken((entries[0].room,))
        super().append(entries)


def test_a_turn_that_loses_many_times_still_wins() -> None:
    desk = Desk(log := Losing(), shared=True)
    desk.rooms.handle("room-1", preparation())
    assert desk.rooms.handle("room-1", OpenDoor(door_code="CDFHJ")).door_code == "CDFHJ"
    assert log.losses == 0
