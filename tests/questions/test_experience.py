"""What classes chose goes first among the wrong options, and stays as fair as any other."""

from dataclasses import replace
from random import Random

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import beta

from quizroom.questions.ask import Ask
from quizroom.questions.build import build_item
from quizroom.questions.deck import DealPlan, deal_from
from quizroom.questions.difficulty import expected_difficulty
from quizroom.questions.distractors import candidates
from quizroom.questions.experience import (
    FEWEST_ANSWERS,
    FEWEST_ERRORS,
    AskCount,
    ClassExperience,
    ask_key,
    experience_of,
)
from quizroom.questions.families import asks_of
from quizroom.questions.model import Observed
from quizroom.questions.print import item_as_json
from quizroom.questions.report import report_of, total_of
from quizroom.questions.rules import breaches
from tests.questions.judging import complaints
from tests.questions.lists import REGIONAL, SEED, catalogue, examined, syllabus
from tests.questions.oracle import Oracle
from tests.questions.source_text import read_text

ASKS = tuple(
    ask for family in examined(REGIONAL) for ask in asks_of(syllabus(REGIONAL), family) if ask.make is None
)
PLAN = DealPlan(families=examined(REGIONAL), rounds=60, seed=1)
CHOICES = dict.fromkeys(
    concept for table in syllabus(REGIONAL).tables.values() for concept in (*table.by_value, *table.by_muscle)
)


def count(
    ask: str, *, answered: int = 40, right: int = 20, wrong: dict[str, int] | None = None, typed: bool = False
) -> AskCount:
    return AskCount(ask=ask, typed=typed, answered=answered, right=right, wrong=wrong or {})


def furthest(ask: Ask) -> tuple[str, ...]:
    """The wrong options that would be taken last."""
    ranked = candidates(syllabus(REGIONAL), ask, Random(1))  # noqa: S311 -- a test
    return tuple(concept for concept, _ in reversed(ranked[-2:]))


def with_furthest() -> ClassExperience:
    """Classes that always took the least likely for the key."""
    wrong = {ask_key(ask): furthest(ask) for ask in ASKS}
    counts = [count(key, wrong=dict.fromkeys(chosen, 9)) for key, chosen in wrong.items() if chosen]
    return experience_of(counts, counts)


def test_an_item_and_its_ask_have_the_same_key_whatever_the_format() -> None:
    for ask in ASKS[::40]:
        for format_ in ask.formats:
            item = build_item(syllabus(REGIONAL), ask, format_, SEED)
            assert item is None or ask_key(item) == ask_key(ask)


def test_what_a_class_chose_often_is_the_first_wrong_option_of_the_next_deal() -> None:
    before = deal_from(syllabus(REGIONAL), PLAN)
    after = deal_from(syllabus(REGIONAL), replace(PLAN, experience=with_furthest()))
    lettered = [item for item in after if item.format == "one_best" and item.family != "odd_one_out"]
    taught = [item for item in lettered if any(one.source == "class_error" for one in item.options)]
    assert len(taught) > 0.9 * len(lettered)
    assert total_of(report_of(after)).sources["class_error"] >= len(taught)
    assert not any(one.source == "class_error" for item in before for one in item.options)


def test_every_option_that_classes_bring_in_is_false_by_all_readings_and_breaks_no_rule() -> None:
    text = read_text()
    oracle = Oracle(text, text.courses[REGIONAL])
    experience = with_furthest()
    plain = {ask.id: build_item(syllabus(REGIONAL), ask, ask.formats[0], SEED) for ask in ASKS}
    taught = {
        ask.id: build_item(syllabus(REGIONAL), experience.with_errors(ask), ask.formats[0], SEED)
        for ask in ASKS
    }
    items = [item for item in taught.values() if item is not None]
    assert [one for item in items for one in complaints(oracle, item_as_json(item))] == []
    assert [broken for item in items for broken in breaches(item)] == []
    assert {key for key, item in plain.items() if item} <= {key for key, item in taught.items() if item}


@given(st.sampled_from(ASKS), st.lists(st.sampled_from([*CHOICES, "gone.for_ever", ""]), max_size=6))
def test_no_recorded_choice_whatever_it_is_makes_an_unfair_item(ask: Ask, chosen: list[str]) -> None:
    wrong = dict.fromkeys((*chosen, *ask.key, *sorted(ask.barred)[:3]), 9)
    counts = [count(ask_key(ask), wrong=wrong)]
    item = build_item(
        syllabus(REGIONAL), experience_of(counts, counts).with_errors(ask), ask.formats[0], SEED
    )
    if item is None:
        assert build_item(syllabus(REGIONAL), ask, ask.formats[0], SEED) is None
        return
    wrongly_offered = {one.concept for one in item.options if one.source != "key"}
    assert wrongly_offered.isdisjoint({*ask.key, *ask.barred, "gone.for_ever", ""})
    assert list(breaches(item)) == []


def test_the_same_experience_makes_the_same_deal() -> None:
    plan = replace(PLAN, experience=with_furthest())
    assert deal_from(syllabus(REGIONAL), plan) == deal_from(syllabus(REGIONAL), plan)


def test_errors_of_the_own_course_come_before_those_of_others() -> None:
    own = count("a", wrong={"x": FEWEST_ERRORS})
    everywhere = count("a", wrong={"x": FEWEST_ERRORS, "y": 30, "z": FEWEST_ERRORS - 1})
    assert experience_of([own], [everywhere]).errors == {"a": ("x", "y")}


def test_an_error_that_few_made_is_no_option_yet() -> None:
    assert experience_of([], [count("a", wrong={"x": FEWEST_ERRORS - 1})]).errors == {}
    # chosen by less than a twentieth of those who answered: no functioning wrong option (Tarrant et al. 2009)
    assert experience_of([], [count("a", answered=400, wrong={"x": 19})]).errors == {}
    assert experience_of([], [count("a", answered=400, wrong={"x": 20})]).errors == {"a": ("x",)}


def test_an_error_counts_whether_it_was_typed_or_chosen() -> None:
    counts = [count("a", wrong={"x": 3}), count("a", typed=True, wrong={"x": 2})]
    assert experience_of([], counts).errors == {"a": ("x",)}


def test_nothing_is_said_of_a_question_that_few_have_had() -> None:
    item = deal_from(syllabus(REGIONAL), PLAN)[0]
    few = count(ask_key(item), answered=FEWEST_ANSWERS - 1, right=1)
    assert experience_of([few], [few]).observed_of(item) is None


def test_the_own_course_is_measured_alone_where_enough_of_it_have_answered() -> None:
    item = replace(deal_from(syllabus(REGIONAL), PLAN)[0], format="one_best")
    own, other = count(ask_key(item), answered=8, right=2), count(ask_key(item), answered=80, right=60)
    few = replace(own, answered=4)
    assert experience_of([own], [other]).observed_of(item) == Observed(answered=8, right=2, whose="course")
    assert experience_of([few], [other]).observed_of(item) == Observed(answered=80, right=60, whose="all")
    assert experience_of([own], [other]).observed_of(replace(item, format="typed")) is None


@pytest.mark.parametrize(
    "predicted,answered,right", [(0.4, 0, 0), (0.4, 41, 25), (1.0, 10, 10), (0.3, 500, 1)]
)
def test_data_replace_the_prediction_as_a_beta_prior_is_updated(
    predicted: float, answered: int, right: int
) -> None:
    # mean of the posterior beta distribution (textbook), prior worth ten answers; scipy computes it
    posterior = beta(10 * predicted + answered - right + 1e-12, 10 * (1 - predicted) + right + 1e-12)
    observed = Observed(answered=answered, right=right, whose="all")
    assert expected_difficulty(predicted, observed) == pytest.approx(posterior.mean())


def test_without_data_the_prediction_stands() -> None:
    assert expected_difficulty(0.37, None) == 0.37


def test_old_reviews_of_muscles_that_are_gone_teach_nothing() -> None:
    gone = count("nerve:muscle_to_nerve:no_such_muscle:0000000000000000", wrong={"no_such_nerve": 30})
    plan = replace(PLAN, experience=experience_of([gone], [gone]))
    assert deal_from(syllabus(REGIONAL), plan) == deal_from(syllabus(REGIONAL), PLAN)
    assert "no_such_muscle" not in catalogue().muscles
