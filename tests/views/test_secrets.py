"""Before a round is closed, nothing that is sent to a seat or the wall tells its key."""

from datetime import timedelta
from itertools import pairwise

from hypothesis import given, settings
from hypothesis import strategies as st

from quizroom.room.commands import CloseRound
from tests.room.histories import History, Step, carried_out, histories, played
from tests.views.twins import (
    told_to_all,
    told_to_player,
    told_to_wall,
    with_other_answers,
    with_other_key,
)

often = settings(max_examples=25, deadline=None)


def open_rounds(history: History) -> list[Step]:
    return [step for step in played(history) if step.room.phase == "answering"]


@often
@given(histories(), st.integers(1, 3))
def test_every_view_is_the_same_byte_for_byte_whatever_the_key_is(history: History, shift: int) -> None:
    for step in open_rounds(history):
        assert told_to_all(step.room) == told_to_all(with_other_key(step.room, shift))


@often
@given(histories(), st.integers(1, 3))
def test_orders_meet_the_same_events_and_refusals_whatever_the_key_is(history: History, shift: int) -> None:
    steps = list(played(history))
    for before, step in pairwise(steps):
        if before.room.phase == "answering":
            twin = carried_out(with_other_key(before.room, shift), step.command, step.at)
            if type(step.command).__name__ not in (
                "SwapItem",
                "DropItem",
            ):  # the host's, and about items ahead
                assert twin.events == step.events
                assert str(twin.refused) == str(step.refused)


@often
@given(histories())
def test_the_wall_does_not_tell_who_or_how_many_have_chosen_what(history: History) -> None:
    for step in open_rounds(history):
        assert told_to_wall(step.room) == told_to_wall(with_other_answers(step.room))


@often
@given(histories())
def test_nobody_sees_what_another_has_answered(history: History) -> None:
    for step in open_rounds(history):
        for player in step.room.players:
            twin = with_other_answers(step.room, but=(player,))
            assert told_to_player(step.room, player) == told_to_player(twin, player)


@often
@given(histories())
def test_the_twins_do_differ_once_the_round_is_closed(history: History) -> None:
    """Guards the tests above: a view that never told anything would pass them."""
    for step in open_rounds(history)[-1:]:
        close = CloseRound(round=len(step.room.rounds), by_host=True)
        at = step.at + timedelta(seconds=1)
        closed, twin = (
            carried_out(room, close, at).room for room in (step.room, with_other_key(step.room, 1))
        )
        assert told_to_all(closed) != told_to_all(twin)
