"""The memory model against its published library, against check values, and against common sense."""

import ebisu
import pytest
from hypothesis import given
from hypothesis import strategies as st

from quizroom.second_look.memory import (
    LONGEST_HOURS,
    NEW,
    SHORTEST_HOURS,
    Evidence,
    Memory,
    after_look,
    expected_after,
    hours_until,
    judged,
    recall,
)

DAY = Memory(alpha=4, beta=4, hours=24)
memories = st.builds(
    Memory, alpha=st.floats(1.5, 6), beta=st.floats(1.5, 6), hours=st.floats(SHORTEST_HOURS, 5000)
)
lapses = st.floats(0.05, 8)
chances = st.sampled_from((0.0, 0.2, 0.25, 1 / 3))


def half_life(memory: Memory) -> float:
    """Hours until recall is as likely as not."""
    return hours_until(memory, 0.5)


def test_check_values_of_the_library() -> None:
    # ebisu 2, model (4, 4, 24 h); computed with the library for the trade's handbook.
    assert recall(DAY, 24) == pytest.approx(0.5)
    assert recall(DAY, 1) == pytest.approx(0.96897, abs=1e-5)
    assert half_life(judged(DAY, 24, Evidence(right=True))) == pytest.approx(28.697, abs=1e-3)
    assert half_life(judged(DAY, 24, Evidence(right=False))) == pytest.approx(20.255, abs=1e-3)


def test_a_sharp_memory_is_the_half_life_formula() -> None:
    # p = 2^(-t/h): 1/3, 1 and 7/3 half-lives give .7937 .5 .1984 (Settles & Meeder 2016, ACL; computed).
    sharp = Memory(alpha=4000, beta=4000, hours=30)
    for lapse, expected in ((1 / 3, 0.7937), (1.0, 0.5), (7 / 3, 0.1984)):
        assert recall(sharp, 30 * lapse) == pytest.approx(expected, abs=2e-3)


@given(memories, lapses)
def test_recall_is_that_of_the_library(memory: Memory, lapse: float) -> None:
    model = (memory.alpha, memory.beta, memory.hours)
    hours = lapse * memory.hours
    assert recall(memory, hours) == pytest.approx(ebisu.predictRecall(model, hours, exact=True), rel=1e-6)


@given(memories, lapses, st.booleans(), chances)
def test_an_answer_changes_the_half_life_as_in_the_library(
    memory: Memory,
    lapse: float,
    right: bool,  # noqa: FBT001 - hypothesis draws it
    by_guessing: float,
) -> None:
    hours = lapse * memory.hours
    ours = judged(memory, hours, Evidence(right=right, by_guessing=by_guessing))
    theirs = ebisu.updateRecall(
        (memory.alpha, memory.beta, memory.hours), int(right), 1, hours, q0=by_guessing
    )
    assert half_life(ours) == pytest.approx(ebisu.modelToPercentileDecay(theirs), rel=1e-3)


@given(memories, lapses, chances)
def test_a_right_answer_never_speaks_against_and_a_wrong_one_never_for_it(
    memory: Memory, lapse: float, by_guessing: float
) -> None:
    hours, before = lapse * memory.hours, half_life(memory)
    assert half_life(judged(memory, hours, Evidence(right=True, by_guessing=by_guessing))) >= before * 0.9999
    assert half_life(judged(memory, hours, Evidence(right=False, by_guessing=by_guessing))) <= before * 1.0001


@given(memories, lapses)
def test_what_could_be_guessed_tells_less(memory: Memory, lapse: float) -> None:
    hours = lapse * memory.hours
    typed, chosen = (judged(memory, hours, Evidence(right=True, by_guessing=one)) for one in (0.0, 0.5))
    assert half_life(chosen) <= half_life(typed) * 1.0001


def test_an_answer_at_once_strengthens_nothing_and_a_hard_one_much() -> None:
    at_once = after_look(DAY, 0.01, Evidence(right=True))
    hard = after_look(DAY, 24, Evidence(right=True))
    assert half_life(at_once) < 1.05 * half_life(DAY)
    assert half_life(hard) > 1.9 * half_life(DAY)


@given(memories, lapses, st.booleans(), chances)
def test_half_lives_stay_within_bounds(
    memory: Memory,
    lapse: float,
    right: bool,  # noqa: FBT001 - hypothesis draws it
    by_guessing: float,
) -> None:
    after = after_look(memory, lapse * memory.hours, Evidence(right=right, by_guessing=by_guessing))
    assert SHORTEST_HOURS <= after.hours <= LONGEST_HOURS
    assert 0 <= recall(after, 24) <= 1


@given(memories, st.floats(0.05, 0.95))
def test_the_time_until_a_chance_is_the_time_at_which_it_holds(memory: Memory, chance: float) -> None:
    assert recall(memory, hours_until(memory, chance)) == pytest.approx(chance, rel=1e-6)


@given(lapses)
def test_what_is_expected_lies_between_a_right_and_a_wrong_answer(lapse: float) -> None:
    hours = lapse * NEW.hours
    wrong, right = (after_look(NEW, hours, Evidence(right=one)).hours for one in (False, True))
    assert wrong <= expected_after(NEW, hours).hours <= right
