"""Rounds open one after another, close once, are explained, struck and ended."""

import pytest

from quizroom.room.commands import (
    CloseRound,
    EndReview,
    OpenRound,
    RestoreItem,
    ShowRecord,
    StrikeItem,
)
from quizroom.room.events import ReviewEnded, RoundClosed
from quizroom.room.rules import decide
from quizroom.room.state import Room
from tests.room.refusing import code_of
from tests.room.sample_items import one_best, typed
from tests.room.samples import CLOSE, after, answering, gathered, ordered, prepared, says


def closed() -> Room:
    return ordered(answering(), says("ada", "B"), CLOSE)


def test_a_round_takes_the_next_item() -> None:
    room = answering(one_best(), typed())
    assert (room.phase, room.rounds[0].item, room.ahead) == ("answering", one_best(), (typed(),))


@pytest.mark.parametrize(
    "room,number,code",
    [
        (prepared(), 1, "door_shut"),
        (answering(), 2, "round_is_open"),
        (gathered(), 2, "no_such_round"),
        (ordered(answering(one_best()), CLOSE), 2, "no_items_left"),
        (ordered(gathered(), EndReview()), 1, "finished"),
    ],
)
def test_a_round_opens_only_when_it_is_its_turn(room: Room, number: int, code: str) -> None:
    assert code_of(room, OpenRound(round=number)) == code


def test_opening_a_round_twice_does_not_skip_one() -> None:
    assert decide(answering(), OpenRound(round=1), after(1)) == ()
    assert decide(closed(), OpenRound(round=1), after(1)) == ()


def test_a_closed_round_need_not_be_explained_before_the_next() -> None:
    assert ordered(closed(), OpenRound(round=2)).phase == "answering"


def test_the_host_may_close_at_once_and_the_alarm_only_after_deadline_and_grace() -> None:
    alarm = CloseRound(round=1, by_host=False)
    assert code_of(answering(), CLOSE) is None
    assert code_of(answering(), alarm, after(30.749)) == "too_early"
    (event,) = decide(answering(), alarm, after(30.75))
    assert isinstance(event, RoundClosed)
    assert event.cause == "time"


def test_closing_twice_changes_nothing_and_never_closes_the_next_round() -> None:
    assert decide(closed(), CLOSE, after(1)) == ()
    assert decide(ordered(closed(), OpenRound(round=2)), CLOSE, after(1)) == ()


def test_what_is_not_open_cannot_be_closed() -> None:
    assert code_of(gathered(), CLOSE) == "not_answering"
    assert code_of(answering(), CloseRound(round=2, by_host=True)) == "not_answering"


def test_the_record_is_shown_once_the_round_is_closed() -> None:
    assert code_of(answering(), ShowRecord(round=1)) == "not_closed"
    room = ordered(closed(), ShowRecord(round=1))
    assert (room.phase, room.rounds[0].explained_at) == ("explained", after(0))
    assert decide(room, ShowRecord(round=1), after(1)) == ()


def test_a_record_is_not_shown_late_over_another_round() -> None:
    assert code_of(ordered(closed(), OpenRound(round=2)), ShowRecord(round=1)) == "not_closed"
    assert code_of(closed(), ShowRecord(round=2)) == "no_such_round"


def test_an_item_may_be_struck_and_restored_at_any_time_once_opened() -> None:
    for room in (
        answering(),
        closed(),
        ordered(closed(), OpenRound(round=2)),
        ordered(closed(), EndReview()),
    ):
        struck = ordered(room, StrikeItem(round=1))
        assert struck.rounds[0].struck
        assert struck.phase == room.phase
        assert ordered(struck, RestoreItem(round=1)).rounds == room.rounds
    assert code_of(gathered(), StrikeItem(round=1)) == "no_such_round"
    assert code_of(answering(), RestoreItem(round=2)) == "no_such_round"


def test_ending_during_a_round_closes_it_and_keeps_its_answers() -> None:
    room = ordered(answering(), says("ada", "B"))
    first, second = decide(room, EndReview(), after(5))
    assert isinstance(first, RoundClosed)
    assert isinstance(second, ReviewEnded)
    assert first.cause == "end"
    ended = ordered(room, EndReview(), at=after(5))
    assert (ended.phase, ended.finished_at) == ("finished", after(5))
    assert ended.rounds[0].closed_at == after(5)
    assert set(ended.rounds[0].answers) == {"ada"}


@pytest.mark.parametrize("room", [prepared(), gathered(), closed(), ordered(closed(), ShowRecord(round=1))])
def test_a_review_may_be_ended_in_any_phase(room: Room) -> None:
    ended = ordered(room, EndReview())
    assert ended.phase == "finished"
    assert decide(ended, EndReview(), after(1)) == ()
