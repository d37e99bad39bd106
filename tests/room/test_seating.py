"""Who may sit down, under which name, and from which round on they are counted."""

from collections.abc import Iterator
from contextlib import contextmanager

import pytest

from quizroom.room.commands import (
    CloseRound,
    EndReview,
    EnterSeat,
    OpenRound,
    RemovePlayer,
    RenamePlayer,
    SubmitAnswer,
)
from quizroom.room.refusals import Refused
from quizroom.room.rules import decide
from quizroom.room.seating import first_counted_round, player_of_key
from quizroom.room.state import Room
from tests.room.refusing import code_of
from tests.room.samples import NOON, answering, gathered, ordered, plan, prepared, says, seat


def test_nobody_enters_before_the_door_is_open() -> None:
    assert code_of(prepared(), seat("ada")) == "door_shut"


def test_nobody_new_enters_a_finished_review() -> None:
    assert code_of(ordered(gathered(), EndReview()), seat("cem")) == "finished"


def test_the_same_seat_key_comes_back_to_the_same_seat_whatever_else_it_says() -> None:
    room = ordered(answering(), says("ada", "B"))
    again = EnterSeat(player="new-id", handle="Another", key_hash="hash of ada")
    assert decide(room, again, NOON) == ()
    assert decide(ordered(room, EndReview()), again, NOON) == ()


def test_a_full_room_takes_nobody_more_until_somebody_leaves() -> None:
    room = gathered(by=plan(capacity=2))
    assert code_of(room, seat("cem")) == "room_full"
    assert code_of(room, seat("ada")) is None
    assert set(ordered(room, RemovePlayer(player="bo"), seat("cem")).players) == {"ada", "cem"}


@pytest.mark.parametrize("handle", ["ADA", "\uff21\uff44\uff41", " ada ", "A\u200bda"])
def test_two_players_cannot_have_handles_that_look_alike(handle: str) -> None:
    assert code_of(gathered(), seat("cem", handle)) == "handle_taken"
    assert code_of(gathered(), RenamePlayer(player="bo", handle=handle)) == "handle_taken"


@pytest.mark.parametrize("handle", ["", " ", "🦴", "y" * 41])
def test_a_bad_handle_is_refused(handle: str) -> None:
    assert code_of(gathered(), EnterSeat(player="cem", handle=handle, key_hash="c")) == "bad_handle"
    assert code_of(gathered(), RenamePlayer(player="bo", handle=handle)) == "bad_handle"


def test_a_player_may_be_renamed_to_another_spelling_of_the_own_handle() -> None:
    room = ordered(gathered(), RenamePlayer(player="ada", handle="ADA"))
    assert room.players["ada"].handle == "ADA"


def test_another_key_cannot_take_a_seat_that_is_taken() -> None:
    thief = EnterSeat(player="ada", handle="Cem", key_hash="another key")
    assert code_of(gathered(), thief) == "seat_taken"


@pytest.mark.parametrize("order", [RemovePlayer(player="nobody"), RenamePlayer(player="nobody", handle="X")])
def test_a_stranger_cannot_be_renamed_or_removed(order: RemovePlayer | RenamePlayer) -> None:
    assert code_of(gathered(), order) == "no_such_player"


def rooms_and_first_rounds() -> list[tuple[Room, int]]:
    opened = answering()
    closed = ordered(opened, CloseRound(round=1, by_host=True))
    return [(gathered(), 1), (opened, 1), (closed, 2), (ordered(closed, OpenRound(round=2)), 2)]


@pytest.mark.parametrize("room,first", rooms_and_first_rounds())
def test_who_comes_late_is_counted_from_the_open_round_or_else_the_next(room: Room, first: int) -> None:
    assert first_counted_round(room) == first
    assert ordered(room, seat("cem")).players["cem"].from_round == first


def test_a_removed_player_cannot_answer_and_their_answers_count_no_more() -> None:
    room = ordered(answering(), says("ada", "B"), says("bo", "A"), RemovePlayer(player="ada"))
    assert set(room.rounds[0].answers) == {"bo"}
    assert code_of(room, says("ada", "A")) == "no_such_player"


def test_removing_somebody_leaves_rounds_without_their_answers_as_they_were() -> None:
    room = ordered(answering(), says("bo", "A"))
    assert ordered(room, RemovePlayer(player="ada")).rounds[0] is room.rounds[0]


def test_a_removed_player_who_enters_again_begins_anew() -> None:
    room = ordered(answering(), says("ada", "B"), RemovePlayer(player="ada"))
    again = EnterSeat(player="ada-2", handle="Ada", key_hash="hash of ada")
    back = ordered(room, again)
    seated = player_of_key(back, "hash of ada")
    assert seated is not None
    assert seated.id == "ada-2"
    assert back.rounds[0].answers == {}


def test_a_refusal_passes_through_a_context_manager_unharmed() -> None:
    # A frozen dataclass would break here: `contextlib` writes the traceback into the exception.
    @contextmanager
    def any_context() -> Iterator[None]:
        yield

    with pytest.raises(Refused), any_context():
        decide(gathered(), SubmitAnswer(player="ada", round=1, choice=("A",)), NOON)
