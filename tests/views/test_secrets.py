"""Before the result of a round is shown, nothing that is sent to a seat or the wall tells its key."""

from datetime import timedelta
from itertools import pairwise

from hypothesis import given, settings
from hypothesis import strategies as st

from quizroom.marking import marks_of_room
from quizroom.realtime.broadcast import tally_of
from quizroom.room.change_commands import RekeyItem
from quizroom.room.commands import (
    CloseRound,
    EnterSeat,
    RemovePlayer,
    RestoreItem,
    RuleOnWords,
    ShowResult,
    StrikeItem,
)
from quizroom.room.holding import is_held
from quizroom.room.state import Room
from quizroom.views.public import public_view
from tests.room.histories import History, Step, carried_out, histories, played, talks
from tests.views.twins import (
    NOW,
    told_to_all,
    told_to_player,
    told_to_wall,
    with_other_answers,
    with_other_key,
)

HOSTS_CHANGES = (RuleOnWords, StrikeItem, RestoreItem, RekeyItem)
often = settings(max_examples=25, deadline=None)


def open_rounds(history: History) -> list[Step]:
    return [step for step in played(history) if step.room.phase == "answering"]


def secret_rounds(history: History) -> list[Step]:
    """Where the current round is open, or closed with its result held."""
    return [step for step in played(history) if is_secret(step.room)]


def is_secret(room: Room) -> bool:
    return bool(room.rounds) and room.rounds[-1].shown_at is None


@often
@given(histories() | talks(), st.integers(1, 3))
def test_every_view_is_the_same_byte_for_byte_whatever_the_key_is(history: History, shift: int) -> None:
    for step in secret_rounds(history):
        assert told_to_all(step.room) == told_to_all(with_other_key(step.room, shift))


@often
@given(histories() | talks(), st.integers(1, 3))
def test_orders_meet_the_same_events_and_refusals_whatever_the_key_is(history: History, shift: int) -> None:
    steps = list(played(history))
    for before, step in pairwise(steps):
        if is_secret(before.room):
            twin = carried_out(with_other_key(before.room, shift), step.command, step.at)
            if type(step.command).__name__ not in (
                "SwapItem",
                "AddItem",
                "DropItem",
                "RekeyItem",
            ):  # the host's, and about items ahead or the key itself
                assert twin.events == step.events
                assert str(twin.refused) == str(step.refused)


@often
@given(histories() | talks())
def test_the_wall_does_not_tell_who_or_how_many_have_chosen_what(history: History) -> None:
    for step in secret_rounds(history):
        assert told_to_wall(step.room) == told_to_wall(with_other_answers(step.room))


@often
@given(histories() | talks())
def test_nobody_sees_what_another_has_answered(history: History) -> None:
    for step in secret_rounds(history):
        for player in step.room.players:
            twin = with_other_answers(step.room, but=(player,))
            assert told_to_player(step.room, player) == told_to_player(twin, player)


@often
@given(histories() | talks())
def test_while_a_result_is_held_its_count_and_everybodys_marks_stand_still(history: History) -> None:
    for before, step in pairwise(played(history)):
        if told_as(step.room) is not None and told_as(before.room) == told_as(step.room):
            assert tally_of(step.room).answered == tally_of(before.room).answered
            assert public_view(step.room, marks_of_room(step.room), NOW).standings is None
            if not isinstance(step.command, (RemovePlayer, EnterSeat, *HOSTS_CHANGES)):
                assert marks_of_room(step.room).totals == marks_of_room(before.room).totals


def told_as(room: Room) -> tuple[object, ...] | None:
    """By which closing the count that everybody is told came to stand still; None where it may move."""
    if not is_held(room) or room.phase == "answering again":
        return None
    return len(room.rounds), room.rounds[-1].again_closed_at


@often
@given(histories() | talks(), st.integers(1, 3))
def test_the_twins_do_differ_once_a_held_result_is_shown(history: History, shift: int) -> None:
    """Guards the tests above, as the next one does."""
    for step in [one for one in played(history) if is_held(one.room) and one.room.phase == "closed"][-1:]:
        show = ShowResult(round=len(step.room.rounds), ends_own_time=True)
        rooms = (step.room, with_other_key(step.room, shift))
        shown, twin = (carried_out(room, show, step.at).room for room in rooms)
        assert shown.rounds[-1].shown_at == step.at
        assert told_to_all(shown) != told_to_all(twin)


@often
@given(histories() | talks())
def test_the_twins_do_differ_once_the_round_is_closed(history: History) -> None:
    """Guards the tests above: a view that never told anything would pass them."""
    for step in open_rounds(history)[-1:]:
        number, at = len(step.room.rounds), step.at + timedelta(seconds=1)
        closed, twin = (
            carried_out(carried_out(room, CloseRound(round=number, by_host=True), at).room, show, at).room
            for room in (step.room, with_other_key(step.room, 1))
            for show in [ShowResult(round=number, ends_own_time=True)]
        )
        assert told_to_all(closed) != told_to_all(twin)
