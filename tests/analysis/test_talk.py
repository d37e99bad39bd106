"""What talking changed, against published shares and by what must always hold."""

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from quizroom.analysis.talk import (
    NO_GAIN,
    NOBODY_TWICE,
    RightOf,
    TalkOfRound,
    advice,
    change_of,
    normalised_gain,
    right_of,
    talk_of_room,
)
from quizroom.marking import marks_of_room
from quizroom.room.commands import CloseRound, Command, OpenRound, ShowResult, StrikeItem, SubmitAnswer
from quizroom.room.state import Room
from quizroom.room.talk_commands import AddTwin, CloseAgain, LetTalk, OpenAgain
from tests.room.sample_items import one_best
from tests.room.samples import answering, ordered, plan, says

marks = st.dictionaries(st.sampled_from("abcdefgh"), st.sampled_from((0.0, 1 / 3, 1.0)))
quick = settings(max_examples=50, deadline=None)

# Smith et al. 2009 (Science, "Why peer discussion improves student performance on in-class concept
# questions"), as the trade's handbook quotes it: 52 % right alone, 68 % after talk, 73 % on the twin, alone.
SMITH = (0.52, 0.68, 0.73)


def test_the_published_shares_give_a_gain_of_a_third_and_of_seven_sixteenths() -> None:
    first, second, twin = SMITH
    assert normalised_gain(first, second) == pytest.approx(16 / 48)
    assert normalised_gain(first, twin) == pytest.approx(21 / 48)


def test_where_all_were_right_there_is_no_gain_to_speak_of_and_a_loss_is_negative() -> None:
    assert normalised_gain(1.0, 1.0) is None
    assert normalised_gain(0.5, 0.25) == -0.5
    assert normalised_gain(0.0, 1.0) == 1.0


@pytest.mark.parametrize(
    "right, of, advised",
    [  # Vickrey 2015: below 35 % explain again, 35 to 70 % talk, above 70 % go on
        (0, 20, "explain"),
        (34, 100, "explain"),
        (35, 100, "talk"),
        (52, 100, "talk"),
        (70, 100, "talk"),
        (71, 100, "go on"),
        (20, 20, "go on"),
        (0, 0, None),
    ],
)
def test_advice_follows_the_published_thresholds(right: int, of: int, advised: str | None) -> None:
    assert advice(RightOf(right=right, of=of)) == advised


def test_only_the_full_mark_is_right() -> None:
    assert right_of({"ada": 1.0, "bo": 0.5, "cem": 0.99, "dele": 0.0}) == RightOf(right=1, of=4)


@quick
@given(marks, marks)
def test_the_change_counts_everybody_who_answered_twice_once(
    first: dict[str, float], second: dict[str, float]
) -> None:
    change, both = change_of(first, second), first.keys() & second.keys()
    assert change.of == len(both)
    assert change.before == right_of({player: first[player] for player in both})
    assert change.after == right_of({player: second[player] for player in both})
    turned = change_of(second, first)
    assert (turned.right_wrong, turned.wrong_right) == (change.wrong_right, change.right_wrong)


@quick
@given(st.integers(0, 99), st.integers(0, 100))
def test_the_gain_is_the_part_of_what_was_missing(before: int, after: int) -> None:
    gain = normalised_gain(before / 100, after / 100)
    assert gain is not None
    assert gain <= 1
    assert (gain > 0) == (after > before)
    assert before / 100 + gain * (1 - before / 100) == pytest.approx(after / 100)


def again(player: str, letter: str) -> SubmitAnswer:
    return replace(says(player, letter), again=True)


def talked(first: str, second: str, *more: Command) -> Room:
    """Ten players answer B (right) or A: one letter of `first` and `second` each, "-" for no answer."""
    players = [f"p{number}" for number in range(len(first))]
    room = answering(by=replace(plan(), holds_results=True), players=players)
    said = [says(player, letter) for player, letter in zip(players, first, strict=True) if letter != "-"]
    room = ordered(room, *said, CloseRound(round=1, by_host=True))
    room = ordered(room, LetTalk(round=1), OpenAgain(round=1, by_host=True))
    said = [again(player, letter) for player, letter in zip(players, second, strict=True) if letter != "-"]
    return ordered(room, *said, CloseAgain(round=1, by_host=True), *more)


def told(room: Room) -> TalkOfRound:
    (only,) = talk_of_room(room, marks_of_room(room))
    return only


def test_a_round_is_told_with_shares_changes_and_the_gain_of_those_who_answered_twice() -> None:
    outcome = told(talked("BBBAAAAA-B", "BBABBAA-B-"))
    assert (outcome.first, outcome.second) == (RightOf(right=4, of=9), RightOf(right=5, of=8))
    change = outcome.change
    assert (change.right_right, change.right_wrong, change.wrong_right, change.wrong_wrong) == (2, 1, 2, 2)
    assert outcome.gain == pytest.approx((4 / 7 - 3 / 7) / (4 / 7))
    assert (outcome.twin_round, outcome.twin) == (None, None)


def test_a_gain_that_is_not_defined_says_why() -> None:
    assert (told(talked("BB", "BA")).gain, told(talked("BB", "BA")).no_gain) == (None, NO_GAIN)
    assert told(talked("B-", "-B")).no_gain == NOBODY_TWICE


def test_the_twin_is_told_once_it_is_closed_and_only_as_long_as_it_counts() -> None:
    twin = AddTwin(round=1, item=one_best("twin"))
    opened = (twin, ShowResult(round=1), OpenRound(round=2), says("p0", "B", round_=2))
    assert (told(talked("AA", "BA", *opened)).twin_round, told(talked("AA", "BA", *opened)).twin) == (2, None)
    closed = talked("AA", "BA", *opened, CloseRound(round=2, by_host=True))
    assert told(closed).twin == RightOf(right=1, of=1)
    assert told(ordered(closed, StrikeItem(round=2))).twin is None
    assert talk_of_room(ordered(closed, StrikeItem(round=1)), marks_of_room(closed)) == ()
