"""Which answers are taken, for how long, and in which form they are kept."""

import pytest

from quizroom.room.commands import (
    CloseRound,
    EndReview,
    OpenRound,
    PauseRound,
)
from quizroom.room.rules import decide
from quizroom.room.state import Room
from tests.room.refusing import code_of
from tests.room.samples import after, answering, choice_of, gathered, ordered, plan, says, seat


@pytest.mark.parametrize("seconds", [0, 29.9, 30, 30.749])
def test_an_answer_is_taken_until_the_grace_after_the_deadline_is_over(seconds: float) -> None:
    assert code_of(answering(), says("ada", "B"), after(seconds)) is None


@pytest.mark.parametrize("seconds", [30.75, 31, 3600])
def test_an_answer_after_the_grace_is_too_late_even_if_no_alarm_has_closed_the_round(seconds: float) -> None:
    # 30 s for the item and 750 ms of grace, the number of the trade handbook (5.2, from memory)
    assert code_of(answering(), says("ada", "B"), after(seconds)) == "too_late"


@pytest.mark.parametrize(
    "room", [answering(by=plan(timing="untimed")), ordered(answering(), PauseRound(round=1))]
)
def test_without_a_running_clock_no_answer_is_too_late(room: Room) -> None:
    assert code_of(room, says("ada", "B"), after(99_999)) is None


def test_an_answer_may_be_changed_until_the_round_closes() -> None:
    room = ordered(answering(), says("ada", "B"), says("ada", "C"))
    assert choice_of(room) == ("C",)
    assert code_of(ordered(room, CloseRound(round=1, by_host=True)), says("ada", "A")) == "too_late"


def test_the_same_answer_again_changes_nothing_even_after_closing() -> None:
    # The acknowledgement may have been lost on its way, so the browser says it again.
    answered = ordered(answering(), says("ada", "B"))
    closed = ordered(answered, CloseRound(round=1, by_host=True))
    later = [closed, ordered(closed, OpenRound(round=2)), ordered(closed, EndReview())]
    assert [decide(room, says("ada", "B"), after(60)) for room in (answered, *later)] == [()] * 4


def test_an_answer_to_a_former_round_is_too_late() -> None:
    room = ordered(answering(), CloseRound(round=1, by_host=True), OpenRound(round=2))
    assert code_of(room, says("ada", "B", round_=1)) == "too_late"


@pytest.mark.parametrize("number", [-1, 0, 2, 99])
def test_an_answer_to_a_round_that_was_never_opened_is_refused(number: int) -> None:
    assert code_of(answering(), says("ada", "B", round_=number)) == "no_such_round"


def test_nobody_answers_before_the_first_round_or_without_a_seat() -> None:
    assert code_of(gathered(), says("ada", "B")) == "no_such_round"
    assert code_of(answering(), says("stranger", "B")) == "no_such_player"


def test_who_comes_after_closing_cannot_answer_that_round() -> None:
    room = ordered(answering(), CloseRound(round=1, by_host=True), seat("cem"))
    assert code_of(room, says("cem", "B")) == "too_late"


def test_who_comes_late_may_answer_the_open_round() -> None:
    room = ordered(answering(), seat("cem"), says("cem", "B"))
    assert choice_of(room, "cem") == ("B",)
