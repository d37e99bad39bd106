"""The arithmetic of a round's clock: limits, pauses, longer rounds, time given back."""

from datetime import datetime

import pytest

from quizroom.room.clock import GRACE_MS, is_over
from quizroom.room.commands import (
    CloseRound,
    OpenRound,
    PauseRound,
    ResumeRound,
)
from quizroom.room.rules import decide
from quizroom.room.state import Room, Round
from tests.room.refusing import code_of
from tests.room.samples import after, answering, ordered, plan


def clock(room: Room) -> Round:
    return room.rounds[-1]


def closes_at(room: Room) -> datetime | None:
    return clock(room).closes_at


def test_the_grace_is_that_of_the_handbook() -> None:
    assert GRACE_MS == 750  # trade handbook 5.2 (from memory)


@pytest.mark.parametrize("timing,seconds", [("computed", 30), ("fixed", 45), ("untimed", None)])
def test_a_round_lasts_as_long_as_its_item_or_the_host_says(timing: str, seconds: int | None) -> None:
    room = answering(by=plan(timing=timing))
    assert closes_at(room) == (None if seconds is None else after(seconds))
    assert clock(room).limit_ms == (None if seconds is None else seconds * 1000)


def test_a_pause_keeps_what_is_left_and_resuming_gives_it_back() -> None:
    paused = ordered(answering(), PauseRound(round=1), at=after(12.5))
    assert (clock(paused).left_ms, closes_at(paused)) == (17_500, None)
    resumed = ordered(paused, ResumeRound(round=1), at=after(100))
    assert (clock(resumed).left_ms, closes_at(resumed)) == (None, after(117.5))
    assert clock(resumed).limit_ms == 30_000


def test_a_pause_after_the_deadline_leaves_nothing_but_keeps_the_round_open() -> None:
    paused = ordered(answering(), PauseRound(round=1), at=after(30.5))
    assert clock(paused).left_ms == 0
    assert not is_over(clock(paused), after(500))


def test_the_clock_of_an_untimed_round_can_stand_and_run_without_a_deadline() -> None:
    paused = ordered(answering(by=plan(timing="untimed")), PauseRound(round=1))
    assert (clock(paused).paused, clock(paused).left_ms) == (True, None)
    assert closes_at(ordered(paused, ResumeRound(round=1), at=after(9))) is None


def test_pausing_twice_keeps_the_first_moment() -> None:
    room = ordered(answering(), PauseRound(round=1), at=after(10))
    assert decide(room, PauseRound(round=1), after(20)) == ()
    assert decide(answering(), ResumeRound(round=1), after(20)) == ()


@pytest.mark.parametrize("order", [PauseRound(round=1), ResumeRound(round=1)])
def test_only_the_open_round_has_a_clock(order: PauseRound | ResumeRound) -> None:
    closed = ordered(answering(), CloseRound(round=1, by_host=True))
    assert code_of(closed, order) == "not_answering"
    assert code_of(ordered(closed, OpenRound(round=2)), order) == "not_answering"
