"""What cannot be stored has not happened."""

import pytest

from quizroom.room.events import AnswerAccepted
from quizroom.service.ports import NotStored, VersionTaken
from tests.room.samples import preparation, says
from tests.service.fakes import WatchedLog, seated


@pytest.mark.parametrize("failure", [NotStored("disk full"), RuntimeError("a bug")])
def test_what_is_not_stored_is_neither_answered_nor_told_nor_in_the_room(failure: Exception) -> None:
    desk = seated(log := WatchedLog())
    before, told = desk.rooms.room("room-1"), len(desk.told)
    log.failure = failure
    with pytest.raises(type(failure)):
        desk.rooms.handle("room-1", says("ada", "B"))
    with pytest.raises(type(failure)):
        desk.rooms.handle("room-2", preparation())
    assert desk.rooms.room("room-1") is before
    assert len(desk.told) == told
    assert desk.rooms.find("room-2") is None


def test_after_a_failure_the_same_order_may_be_given_again() -> None:
    desk = seated(log := WatchedLog())
    log.failure = NotStored("disk full")
    with pytest.raises(NotStored):
        desk.rooms.handle("room-1", says("ada", "B"))
    log.failure = None
    assert "ada" in desk.rooms.handle("room-1", says("ada", "B")).rounds[0].answers
    assert [type(event) for event in desk.logged()].count(AnswerAccepted) == 1


def test_who_is_always_too_slow_is_told_that_nothing_was_stored() -> None:
    desk = seated(log := WatchedLog())
    log.failure = VersionTaken(("room-1",))
    with pytest.raises(NotStored):
        desk.rooms.handle("room-1", says("ada", "B"))
