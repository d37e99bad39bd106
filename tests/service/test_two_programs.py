"""Two programs serve the same room over one log: the version number is the lock."""

import pytest

from quizroom.room.commands import CloseRound
from quizroom.room.events import AnswerAccepted
from quizroom.room.refusals import Refused
from quizroom.service.ports import EventLog
from quizroom.storage.memory import MemoryEventLog
from tests.room.samples import preparation, says
from tests.service.fakes import Desk, seated


def two(log: EventLog) -> tuple[Desk, Desk]:
    """Both know the room as it is with its first round open."""
    one = seated(log)
    other = Desk(log)
    assert other.rooms.room("room-1") == one.rooms.room("room-1")
    return one, other


def test_the_slower_one_reads_on_and_decides_again() -> None:
    one, other = two(MemoryEventLog())
    one.rooms.handle("room-1", says("ada", "B"))
    room = other.rooms.handle("room-1", says("bo", "A"))
    assert set(room.rounds[0].answers) == {"ada", "bo"}
    assert room == one.folded()


def test_deciding_again_may_end_in_a_refusal() -> None:
    one, other = two(MemoryEventLog())
    one.rooms.handle("room-1", CloseRound(round=1, by_host=True))
    before = one.logged()
    with pytest.raises(Refused, match="too_late"):
        other.rooms.handle("room-1", says("bo", "A"))
    assert one.logged() == before
    assert other.rooms.room("room-1").phase == "closed"


def test_deciding_again_may_find_the_order_carried_out() -> None:
    one, other = two(MemoryEventLog())
    one.rooms.handle("room-1", says("ada", "B"))
    other.rooms.handle("room-1", says("ada", "B"))
    assert [type(event) for event in one.logged()].count(AnswerAccepted) == 1


def test_they_may_take_turns_for_ever() -> None:
    one, other = two(MemoryEventLog())
    for number in range(20):
        (one if number % 2 else other).rooms.handle("room-1", says("ada", "ABCD"[number % 4]))
    assert one.rooms.handle("room-1", says("bo", "A")) == one.folded()
    assert other.rooms.handle("room-1", says("bo", "B")) == one.folded()


def test_a_room_of_one_does_not_hold_up_rooms_of_the_other() -> None:
    one, other = two(MemoryEventLog())
    other.rooms.handle("room-2", preparation())
    assert one.rooms.room("room-2").id == "room-2"
