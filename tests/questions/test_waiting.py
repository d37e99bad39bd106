"""No question, record or reason tells the key of a later round: what would do so waits for that round."""

from collections.abc import Sequence
from dataclasses import replace
from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from quizroom.questions.blueprint import Blueprint
from quizroom.questions.deck import ALL_FORMATS, LETTERED, CannotDeal, DealPlan, deal_from, items_of, swap
from quizroom.questions.model import Format, Item
from quizroom.questions.review_rules import given_away, kept_waiting
from quizroom.questions.waiting import IT_WAITS, can_stand_between, gives_away, told_before
from tests.questions.grids import course_grids
from tests.questions.lists import COURSES, REGIONAL, catalogue, examined, syllabus
from tests.questions.tellings import tells

Formats = tuple[Format, ...]
FORMATS = st.sampled_from([LETTERED, ALL_FORMATS])


def plain(course: str, rounds: int, seed: int, formats: Formats = LETTERED) -> DealPlan:
    """A plan of all families of a course list."""
    return DealPlan(families=examined(course), rounds=rounds, seed=seed, formats=formats)


def told(items: Sequence[Item]) -> list[Item]:
    """Each round as it is explained."""
    return [told_before(item, items[place + 1 :]) for place, item in enumerate(items)]


def assert_independent(items: Sequence[Item]) -> None:
    """By the rule itself, and by one that reads names in the texts that are shown."""
    assert given_away(items) == ()
    shown = told(items)
    for place, later in enumerate(items):
        assert [one.stem for one in shown[:place] if tells(catalogue(), one, later)] == [], later.stem


@settings(max_examples=25, deadline=None)
@given(st.sampled_from(COURSES), st.integers(2, 40), st.integers(0, 10_000), FORMATS)
def test_no_round_of_any_deal_tells_the_key_of_a_later_one(
    course: str, rounds: int, seed: int, formats: Formats
) -> None:
    assert_independent(deal_from(syllabus(course), plain(course, rounds, seed, formats)))


@settings(max_examples=25, deadline=None)
@given(course_grids(), st.integers(0, 10_000), FORMATS)
def test_no_round_of_any_grid_tells_the_key_of_a_later_one(
    case: tuple[str, Blueprint], seed: int, formats: Formats
) -> None:
    course, blueprint = case
    plan = DealPlan(families=(), rounds=0, seed=seed, formats=formats, blueprint=blueprint)
    try:
        items = deal_from(syllabus(course), plan)
    except CannotDeal:
        return
    assert_independent(items)


@settings(max_examples=12, deadline=None)
@given(st.sampled_from(COURSES), st.integers(0, 10_000))
def test_items_swapped_and_dropped_by_the_host_leave_it_so(course: str, seed: int) -> None:
    plan, random = plain(course, 14, seed), Random(seed)  # noqa: S311 -- which places are changed is no secret
    items = list(deal_from(syllabus(course), plan))
    for _ in range(4):
        place = random.randrange(len(items))
        items[place] = swap(catalogue(), catalogue().courses[course], plan, items, place, seed + place)
        del items[random.randrange(len(items))]
        assert_independent(items)


@pytest.mark.parametrize("course", ["kinesiology", "regional_gross_anatomy"])
def test_where_muscles_are_enough_hardly_anything_waits(course: str) -> None:
    waiting = [kept_waiting(deal_from(syllabus(course), plain(course, 12, seed))) for seed in range(10)]
    assert sum(map(len, waiting)) <= 5


def about_one_muscle() -> tuple[Item, ...]:
    """Two rounds about one muscle, and one about another."""
    items = deal_from(syllabus(REGIONAL), DealPlan(families=("nerve", "origin"), rounds=60, seed=2))
    first = next(item for item in items if sum(item.muscles == one.muscles for one in items) > 1)
    second = next(one for one in items if one.muscles == first.muscles and one is not first)
    other = next(one for one in items if one.muscles != first.muscles)
    return first, second, other


def test_a_record_is_shown_after_the_last_round_about_its_muscle() -> None:
    first, second, other = about_one_muscle()
    assert [len(one.records) for one in told((first, second, other))] == [0, 1, 1]
    assert [len(one.records) for one in told((first, other))] == [1, 1]
    assert given_away((first, second, other)) == ()


def test_a_reason_that_tells_a_later_fact_waits_and_the_others_do_not() -> None:
    first, _, other = about_one_muscle()
    wrong = next(option for option in first.options if option.letter not in first.key and option.reason.facts)
    later = replace(other, facts=wrong.reason.facts[:1], muscles=("another",))
    shown = told_before(first, (later,))
    waits = [option.letter for option in shown.options if option.reason.text == IT_WAITS]
    assert wrong.letter in waits
    assert not set(waits) & set(first.key)
    assert shown.records == first.records


def test_what_the_round_itself_asks_is_told_though_a_twin_asks_it_again() -> None:
    first, _, _ = about_one_muscle()
    assert told_before(first, (replace(first, id="twin"),)).why == first.why


def test_a_landmark_named_before_its_bone_is_asked_for_is_found() -> None:
    items = list(items_of(syllabus(REGIONAL), "look_alike", 1))
    bone = next(item for item in items if item.direction == "landmark_to_bone")
    landmark = bone.stem.removeprefix("On which of these bones is the ").removesuffix("?")
    other = next(item for item in items if item.direction != "landmark_to_bone")
    naming = replace(other, options=(replace(other.options[0], text=f"{landmark} of a bone"),))
    assert gives_away(naming, bone)
    assert given_away((naming, bone)) == (1,)
    assert given_away((bone, naming)) == ()
    assert not can_stand_between(bone, (naming,), ())
    assert not can_stand_between(naming, (), (bone,))
    assert can_stand_between(bone, (), (naming,))


def test_a_record_that_shows_the_way_of_a_nerve_waits_until_it_was_put_in_order() -> None:
    items = deal_from(syllabus(REGIONAL), DealPlan(families=("ordering",), rounds=30, seed=1))
    way = next(item for item in items if item.direction == "nerve_path")
    twin = replace(way, muscles=("another",), facts=("another",))
    assert told_before(way, (twin,)).records == ()
