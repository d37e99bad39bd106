"""A review as a thing: its title, its timing, whose it is, and the order of its items."""

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from quizroom.room.commands import EndReview, OpenDoor, OpenRound
from quizroom.room.folding import replay
from quizroom.room.host_commands import ChangeReview, HandOverReview, HostCommand, MoveItem, RenameReview
from quizroom.room.laying_out import prepare
from quizroom.room.refusals import Refused
from quizroom.room.rules import decide
from quizroom.room.state import Room
from tests.room.sample_items import one_best
from tests.room.samples import NOON, after, ordered, plan, preparation, prepared

LETTERS = "abcde"


def laid_out() -> Room:
    return prepared(*(one_best(name) for name in LETTERS))


def names(room: Room) -> str:
    return "".join(item.id for item in room.ahead)


def test_a_title_may_be_changed_at_any_time_and_is_tidied() -> None:
    room = ordered(laid_out(), RenameReview(title="  Fore\u00a0 arm  again "))
    assert room.plan.title == "Fore arm again"
    over = ordered(room, OpenDoor(door_code="CDFHJ"), EndReview(), RenameReview(title="x" * 300))
    assert over.plan.title == "x" * 120


@pytest.mark.parametrize("title", ["", "   "])
def test_a_review_keeps_a_title(title: str) -> None:
    with pytest.raises(Refused, match="no_title"):
        decide(laid_out(), RenameReview(title=title), NOON)


def test_timing_and_certainty_are_chosen_anew_only_before_the_door_is_open() -> None:
    change = ChangeReview(timing="fixed", seconds=30, certainty=True)
    room = ordered(laid_out(), change)
    assert (room.plan.timing, room.plan.seconds, room.plan.certainty) == ("fixed", 30, True)
    assert room.plan.players_take_time
    room = ordered(room, replace(change, players_take_time=False))
    assert not room.plan.players_take_time
    opened = ordered(room, OpenDoor(door_code="CDFHJ"))
    assert decide(opened, change, NOON) == ()
    with pytest.raises(Refused, match="wrong_phase"):
        decide(opened, ChangeReview(timing="untimed", seconds=30, certainty=True), NOON)
    assert ordered(opened, OpenRound(round=1)).rounds[0].limit_ms == 30_000


def test_a_review_that_is_handed_over_belongs_to_the_other_host() -> None:
    room = ordered(laid_out(), HandOverReview(host="sorrel"))
    assert room.host == "sorrel"
    assert decide(room, HandOverReview(host="sorrel"), NOON) == ()


@settings(max_examples=50, deadline=None)
@given(st.integers(0, 4), st.integers(0, 4))
def test_an_item_is_moved_as_a_list_moves_it_and_a_repeat_changes_nothing(position: int, to: int) -> None:
    room = laid_out()
    command = MoveItem(position=position, item=LETTERS[position], to=to)
    expected = list(LETTERS)
    expected.insert(to, expected.pop(position))
    moved = ordered(room, command)
    assert names(moved) == "".join(expected)
    assert decide(moved, command, NOON) == ()


@pytest.mark.parametrize(
    "position,item,to,code",
    [(1, "a", 2, "no_such_item"), (9, "a", 2, "no_such_item"), (0, "a", 5, "no_such_item")],
)
def test_an_item_that_is_not_there_is_not_moved(position: int, item: str, to: int, code: str) -> None:
    with pytest.raises(Refused, match=code):
        decide(laid_out(), MoveItem(position=position, item=item, to=to), NOON)


def test_items_ahead_can_be_moved_during_class_but_none_whose_round_was_opened() -> None:
    room = ordered(laid_out(), OpenDoor(door_code="CDFHJ"), OpenRound(round=1))
    assert names(ordered(room, MoveItem(position=3, item="e", to=0))) == "ebcd"
    with pytest.raises(Refused, match="no_such_item"):
        decide(room, MoveItem(position=0, item="a", to=1), NOON)


orders: st.SearchStrategy[HostCommand] = st.one_of(
    st.builds(RenameReview, title=st.text(max_size=10)),
    st.builds(
        ChangeReview,
        timing=st.sampled_from(["computed", "fixed", "untimed"]),
        seconds=st.integers(5, 90),
        certainty=st.booleans(),
    ),
    st.builds(HandOverReview, host=st.sampled_from(["owner", "sorrel"])),
    st.builds(
        MoveItem,
        position=st.integers(0, 5),
        item=st.sampled_from(list(LETTERS)),
        to=st.integers(0, 5),
    ),
)


@settings(max_examples=50, deadline=None)
@given(st.lists(orders, max_size=12))
def test_whatever_is_ordered_the_log_gives_the_room_and_no_item_is_lost(
    wanted: list[HostCommand],
) -> None:
    log = list(prepare("room-1", preparation(*(one_best(name) for name in LETTERS), by=plan()), NOON))
    room = replay(log)
    assert room is not None
    for step, command in enumerate(wanted):
        try:
            events = decide(room, command, after(step))
        except Refused:
            continue
        log += events
        room = replay(log)
        assert room is not None
        assert decide(room, command, after(step)) == ()
    assert sorted(names(room)) == list(LETTERS)
    assert room.plan.title
