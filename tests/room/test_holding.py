"""Results that are held until the host shows them."""

from dataclasses import replace

import pytest

from quizroom.marking import Total, marks_of_room
from quizroom.room.commands import (
    CloseRound,
    Command,
    EndReview,
    HoldResults,
    OpenRound,
    RemovePlayer,
    ShowRecord,
    ShowResult,
    StrikeItem,
)
from quizroom.room.refusals import Refused
from quizroom.room.rules import decide
from quizroom.room.state import Plan, Room
from quizroom.views.desk import desk_view
from quizroom.views.desk_actions import desk_actions
from quizroom.views.history import past_review
from quizroom.views.own import own_view
from quizroom.views.public import public_view
from tests.room.samples import CLOSE, after, answering, ordered, plan, says
from tests.views.twins import NOW

HOLDING = replace(plan(standings=True), holds_results=True)


def held(by: Plan = HOLDING) -> Room:
    return ordered(answering(by=by), says("ada", "B"), says("bo", "A"), CLOSE)


def told(room: Room, player: str = "ada") -> tuple[object, ...]:
    marks = marks_of_room(room)
    public, own = public_view(room, marks, NOW), own_view(room, player, marks, NOW)
    return public.result, public.standings, own.result, own.rounds, own.place, own.marks, own.of


def code_of(room: Room, command: Command) -> str:
    with pytest.raises(Refused) as refused:
        decide(room, command, after(1))
    return refused.value.code


def test_a_held_round_is_closed_and_tells_nothing() -> None:
    room = held()
    assert room.phase == "closed"
    assert told(room) == (None, None, None, (), None, 0.0, 0)
    before, after_it = (past_review(one, "ada") for one in (room, ordered(room, ShowResult(round=1))))
    assert before is not None
    assert after_it is not None
    assert (before.rounds, before.of, len(after_it.rounds), after_it.of) == ((), 0, 1, 1)


@pytest.mark.parametrize("show", [ShowResult(round=1), ShowRecord(round=1), EndReview()])
def test_the_result_the_record_or_the_end_shows_what_was_held(show: Command) -> None:
    room = ordered(held(), show)
    result, standings, own, rounds, place, marks, of = told(room)
    assert None not in (result, standings, own)
    assert (len(rounds) if isinstance(rounds, tuple) else 0, place, marks, of) == (1, 1, 1.0, 1)
    assert told(room, "bo")[4:] == (2, 0.0, 1)


def test_without_holding_a_round_is_shown_as_it_closes() -> None:
    room = ordered(answering(by=plan(standings=True)), says("ada", "B"), CLOSE)
    assert room.rounds[0].shown_at == room.rounds[0].closed_at
    assert told(room)[4:] == (1, 1.0, 1)
    assert decide(room, ShowResult(round=1), after(1)) == ()


def test_the_desk_sees_all_and_shows_the_result_next() -> None:
    room = held()
    item = desk_view(room, marks_of_room(room), NOW).items[0]
    assert [option.count for option in item.options] == [1, 1, 0, 0]
    assert item.mean_mark == 0.5
    assert desk_actions(room)[:4] == ("show_result", "show_record", "let_talk", "open_round")
    shown = ordered(room, ShowResult(round=1))
    assert desk_actions(shown)[:2] == ("show_record", "open_round")


def test_holding_is_chosen_anew_at_any_time_for_rounds_that_close_later() -> None:
    room = ordered(answering(), says("ada", "B"), HoldResults(on=True), CLOSE, HoldResults(on=False))
    assert told(room)[0] is None
    assert decide(room, HoldResults(on=False), after(1)) == ()
    later = ordered(room, OpenRound(round=2), CloseRound(round=2, by_host=True))
    assert [one.shown_at for one in later.rounds] == [after(0), after(0)]
    assert code_of(ordered(room, EndReview()), HoldResults(on=True)) == "finished"


def test_who_moves_on_keeps_it_held_and_shows_it_with_the_next() -> None:
    room = ordered(held(), OpenRound(round=2), says("ada", "A", "B", "C", round_=2))
    room = ordered(room, CloseRound(round=2, by_host=True))
    assert told(room)[3:] == ((), None, 0.0, 0)
    assert code_of(room, ShowResult(round=1)) == "not_closed"
    assert marks_of_room(ordered(room, ShowResult(round=2))).totals["ada"] == Total(marks=1.3333, of=2)


def test_the_count_stands_still_from_the_closing_on() -> None:
    untimed = replace(plan(timing="untimed"), holds_results=True)
    room = ordered(held(by=untimed), RemovePlayer(player="bo"))
    assert public_view(room, marks_of_room(room), NOW).answered == 2
    shown = ordered(room, ShowResult(round=1))
    assert public_view(shown, marks_of_room(shown), NOW).answered == 1


def test_a_result_is_shown_once_and_for_the_closed_round_alone() -> None:
    assert code_of(answering(by=HOLDING), ShowResult(round=1)) == "not_closed"
    assert code_of(held(), ShowResult(round=2)) == "no_such_round"
    assert decide(ordered(held(), ShowResult(round=1)), ShowResult(round=1), after(1)) == ()


def test_striking_a_held_item_is_not_told_before_its_result() -> None:
    room = ordered(held(), StrikeItem(round=1))
    assert told(room) == told(held())
    assert told(ordered(room, ShowResult(round=1)))[5:] == (0.0, 0)
