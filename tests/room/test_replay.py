"""Properties of every review, whatever is ordered in whatever sequence."""

from collections.abc import Mapping
from datetime import timedelta
from typing import get_args

from hypothesis import given, settings

from quizroom.marking import marks_of_room
from quizroom.room.clock import is_over
from quizroom.room.commands import (
    AddTime,
    CloseRound,
    DropItem,
    EndReview,
    GiveBackTime,
    OpenDoor,
    OpenRound,
    ShowRecord,
    ShowResult,
    SwapItem,
)
from quizroom.room.events import AnswerAccepted, Event
from quizroom.room.folding import replay
from quizroom.room.laying_out import prepare
from quizroom.room.own_time import later_by_grace, own_clock
from quizroom.room.refusals import RefusalCode
from quizroom.room.state import Answer
from quizroom.room.talk_commands import AddTwin, CloseAgain, LetTalk, OpenAgain
from tests.room.histories import History, Step, carried_out, histories, laying_out, played, talks
from tests.room.samples import NOON

often = settings(max_examples=40, deadline=None)
TALK = (LetTalk, OpenAgain, CloseAgain, AddTwin)
GUARDED = (
    OpenDoor,
    OpenRound,
    CloseRound,
    ShowResult,
    ShowRecord,
    DropItem,
    SwapItem,
    AddTime,
    EndReview,
    *TALK,
)
"""Orders that say which round, item or order they mean, so that even a very late repeat is known."""


@often
@given(histories() | talks())
def test_replaying_the_log_gives_the_live_room_at_every_step(history: History) -> None:
    log: list[Event] = list(_beginning())
    for step in played(history):
        log += step.events
        assert replay(log) == step.room
        assert step.room.version == len(log)


@often
@given(histories() | talks())
def test_an_order_is_refused_with_a_code_or_carried_out_and_never_fails(history: History) -> None:
    for step in played(history):
        if step.refused is not None:
            assert step.refused.code in get_args(RefusalCode)
            assert step.room is step.before


@often
@given(histories() | talks())
def test_the_same_order_again_changes_nothing(history: History) -> None:
    for step in played(history):
        if step.events and not isinstance(step.command, GiveBackTime):  # that one is no message
            again = carried_out(step.room, step.command, step.at + timedelta(milliseconds=5))
            assert again.events == ()


@often
@given(histories() | talks())
def test_a_guarded_order_repeated_at_the_end_changes_nothing(history: History) -> None:
    steps = [step for step in played(history) if step.events]
    for step in steps:
        if isinstance(step.command, GUARDED):
            again = carried_out(steps[-1].room, step.command, steps[-1].at)
            assert again.events == (), step.command


@often
@given(histories() | talks())
def test_answers_are_taken_only_for_the_open_round_and_from_those_seated(history: History) -> None:
    for step in played(history):
        for event in step.events:
            if isinstance(event, AnswerAccepted):
                _assert_may_answer(step, event)


@often
@given(histories() | talks())
def test_closed_rounds_stay_closed_and_keep_the_answers_of_those_present(history: History) -> None:
    for step in played(history):
        for old, new in zip(step.before.rounds, step.room.rounds, strict=False):
            assert (new.dealt or new.item) == (old.dealt or old.item)
            assert old.closed_at in (None, new.closed_at)
            if old.closed_at is not None:
                assert _settled(step, old.answers) == _settled(step, new.answers)
            assert old.again_closed_at in (None, new.again_closed_at)
            if old.again_closed_at is not None:
                assert _settled(step, old.second_answers) == _settled(step, new.second_answers)


@often
@given(histories() | talks())
def test_phase_and_rounds_always_agree(history: History) -> None:
    for step in played(history):
        room = step.room
        assert [each.number for each in room.rounds] == list(range(1, len(room.rounds) + 1))
        assert all(each.closed_at for each in room.rounds[:-1])
        assert (room.phase == "answering") == any(each.closed_at is None for each in room.rounds)
        assert (room.phase == "explained") <= bool(room.rounds and room.rounds[-1].explained_at)


@often
@given(histories() | talks())
def test_marks_of_any_room_can_be_made_and_are_never_more_than_the_rounds(history: History) -> None:
    for step in played(history):
        totals = marks_of_room(step.room).totals
        assert set(totals) == set(step.room.players)
        assert all(0 <= total.marks <= total.of <= len(step.room.rounds) for total in totals.values())


def _beginning() -> tuple[Event, ...]:
    return prepare("room-1", laying_out(), NOON)


def _assert_may_answer(step: Step, event: AnswerAccepted) -> None:
    current = step.before.rounds[-1]
    assert event.round == current.number >= step.before.players[event.player].from_round
    own = own_clock(step.before, event.player)
    if own is None:
        assert step.before.phase == ("answering again" if event.again else "answering")
        assert not is_over(current, event.at)
    else:
        assert event.again == (current.again_at is not None)
        assert current.shown_at is None
        assert own.closes_at is None or event.at < later_by_grace(own.closes_at)
    assert len(event.choice) + len(event.typed) in range(1, current.item.pick + 1)


def _settled(step: Step, answers: Mapping[str, Answer]) -> dict[str, Answer]:
    """The answers of those who are still there and had no time of their own."""
    return {
        player: answer
        for player, answer in answers.items()
        if player in step.room.players and own_clock(step.before, player) is None
    }
