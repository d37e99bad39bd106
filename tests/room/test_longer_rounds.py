"""Longer rounds: time added by the host, time given back after an outage."""

from datetime import datetime

import pytest

from quizroom.room.commands import (
    AddTime,
    CloseRound,
    GiveBackTime,
    OpenRound,
    PauseRound,
    ResumeRound,
)
from quizroom.room.events import TimeAdded
from quizroom.room.rules import decide
from quizroom.room.state import Room, Round
from tests.room.refusing import code_of
from tests.room.samples import after, answering, gathered, ordered, plan

PLUS_15 = AddTime(seconds=15, order="a")


def clock(room: Room) -> Round:
    return room.rounds[-1]


def closes_at(room: Room) -> datetime | None:
    return clock(room).closes_at


def test_added_time_moves_the_deadline_and_the_length() -> None:
    room = ordered(answering(), PLUS_15, AddTime(seconds=15, order="b"), at=after(3))
    assert (closes_at(room), clock(room).limit_ms) == (after(60), 60_000)


def test_added_time_lengthens_a_standing_clock_by_what_is_left() -> None:
    room = ordered(answering(), PauseRound(round=1), PLUS_15, ResumeRound(round=1), at=after(10))
    assert closes_at(room) == after(45)


def test_the_same_order_for_more_time_counts_once_even_in_a_later_round() -> None:
    room = ordered(answering(), PLUS_15, PLUS_15)
    assert closes_at(room) == after(45)
    closed = ordered(room, CloseRound(round=1, by_host=True))
    assert decide(closed, PLUS_15, after(1)) == ()
    assert decide(ordered(closed, OpenRound(round=2)), PLUS_15, after(1)) == ()


@pytest.mark.parametrize("seconds", [0, -15, 7171])
def test_a_round_is_never_shortened_nor_longer_than_two_hours(seconds: int) -> None:
    assert code_of(answering(), AddTime(seconds=seconds, order="a")) == "bad_time"
    assert code_of(answering(), AddTime(seconds=7170, order="a")) is None


def test_there_is_nothing_to_lengthen_without_a_limit_or_an_open_round() -> None:
    assert code_of(answering(by=plan(timing="untimed")), PLUS_15) == "bad_time"
    assert code_of(gathered(), PLUS_15) == "not_answering"


def test_time_given_back_moves_the_deadline_but_is_no_part_of_the_length() -> None:
    room = ordered(answering(), GiveBackTime(ms=8_250), at=after(70))
    assert (closes_at(room), clock(room).limit_ms) == (after(38.25), 30_000)
    assert decide(answering(), GiveBackTime(ms=8_250), after(70)) == (
        TimeAdded(ms=8_250, cause="outage", order=""),
    )


@pytest.mark.parametrize(
    "room",
    [
        gathered(),
        ordered(answering(), PauseRound(round=1)),
        answering(by=plan(timing="untimed")),
        ordered(answering(), CloseRound(round=1, by_host=True)),
    ],
)
def test_no_time_is_given_back_where_none_was_lost(room: Room) -> None:
    assert decide(room, GiveBackTime(ms=5_000), after(9)) == ()


@pytest.mark.parametrize("ms", [0, -1])
def test_no_time_is_taken_away(ms: int) -> None:
    assert decide(answering(), GiveBackTime(ms=ms), after(9)) == ()
