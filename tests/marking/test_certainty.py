"""Certainty: the published marks, what they reward, and that they stay out of everything else.

Check values: A. R. Gardner-Medwin, certainty-based marking: marks 1, 2, 3 if right and 0, -2, -6 if wrong.
"""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from quizroom.analysis.certainty import (
    asks_certainty,
    certainty_mark,
    sureness_of_player,
    sureness_of_room,
)
from quizroom.marking import marks_of_room, standings
from quizroom.room.commands import CloseRound, OpenRound, StrikeItem, SubmitAnswer
from quizroom.room.state import CERTAINTIES, Certainty, Room
from tests.room.sample_items import one_best, pick_three
from tests.room.samples import answering, ordered, plan

DESERVED: dict[Certainty, tuple[float, float]] = {1: (0.0, 2 / 3), 2: (2 / 3, 4 / 5), 3: (4 / 5, 1.0)}
"""Between which shares of right answers a certainty is the best one to say, by the same table."""
SURE = replace(plan(), certainty=True)


def expected(certainty: Certainty, chance: float) -> float:
    right, wrong = (certainty_mark(certainty, right=right) for right in (True, False))
    return chance * right + (1 - chance) * wrong


@pytest.mark.parametrize(
    "chance,marks",
    [(0.5, (0.5, 0, -1.5)), (2 / 3, (2 / 3, 2 / 3, 0)), (0.8, (0.8, 1.2, 1.2)), (0.9, (0.9, 1.6, 2.1))],
)
def test_expected_marks_are_those_of_the_published_table(chance: float, marks: tuple[float, ...]) -> None:
    assert [expected(level, chance) for level in CERTAINTIES] == pytest.approx(marks)


@given(st.floats(0, 1))
def test_it_pays_to_say_what_one_believes(chance: float) -> None:
    best = max(expected(level, chance) for level in CERTAINTIES)
    (deserved, *_) = [level for level, (low, high) in DESERVED.items() if low <= chance <= high]
    assert expected(deserved, chance) == pytest.approx(best)


def said(room: Room, player: str, letter: str, certainty: Certainty | None, *, number: int = 1) -> Room:
    return ordered(room, SubmitAnswer(player=player, round=number, choice=(letter,), certainty=certainty))


def closed(room: Room) -> Room:
    return ordered(room, CloseRound(round=len(room.rounds), by_host=True))


def test_each_player_and_the_class_learn_how_certainty_came_out() -> None:
    room = answering(one_best(), one_best("next"), by=SURE)
    room = closed(said(said(room, "ada", "B", 3), "bo", "C", 3))
    room = ordered(room, OpenRound(round=2))
    room = closed(said(said(room, "ada", "C", 1, number=2), "bo", "B", None, number=2))
    marks = marks_of_room(room)
    ada, bo, everybody = (
        sureness_of_player(room, marks, "ada"),
        sureness_of_player(room, marks, "bo"),
        sureness_of_room(room, marks),
    )
    assert ada is not None
    assert bo is not None
    assert everybody is not None
    assert (ada.marks, ada.answers, bo.marks, bo.answers) == (3 + 0, 2, -6, 1)
    assert everybody.marks == ada.marks + bo.marks
    assert [(level.answers, level.right) for level in everybody.levels] == [(1, 0), (0, 0), (2, 1)]


def test_a_struck_item_counts_for_no_certainty() -> None:
    room = closed(said(answering(one_best(), by=SURE), "bo", "C", 3))
    room = ordered(room, StrikeItem(round=1))
    sureness = sureness_of_player(room, marks_of_room(room), "bo")
    assert sureness is not None
    assert (sureness.marks, sureness.answers) == (0, 0)


@pytest.mark.parametrize("certainty", CERTAINTIES)
def test_marks_and_standings_are_the_same_however_certain(certainty: Certainty) -> None:
    plain, sure = (
        closed(said(said(answering(one_best(), by=SURE), "ada", "B", level), "bo", "C", level))
        for level in (None, certainty)
    )
    assert marks_of_room(plain).totals == marks_of_room(sure).totals
    assert standings(plain, marks_of_room(plain)) == standings(sure, marks_of_room(sure))


def test_where_it_is_not_asked_for_it_is_not_kept() -> None:
    room = said(answering(one_best()), "ada", "B", 3)
    assert room.rounds[0].answers["ada"].certainty is None
    assert sureness_of_room(room, marks_of_room(room)) is None
    assert not asks_certainty(room, one_best())


def test_it_is_asked_where_an_answer_is_right_or_wrong_as_a_whole() -> None:
    room = answering(one_best(), by=SURE)
    assert asks_certainty(room, one_best())
    assert not asks_certainty(room, pick_three())


def test_a_second_thought_about_certainty_alone_is_a_new_answer() -> None:
    room = said(said(answering(one_best(), by=SURE), "ada", "B", 1), "ada", "B", 2)
    assert room.rounds[0].answers["ada"].certainty == 2
    assert said(room, "ada", "B", 2).version == room.version
