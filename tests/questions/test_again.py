"""Asking again: the same fact another way, for all shipped lists."""

from collections import Counter
from collections.abc import Iterator

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from quizroom.questions.again import SINGLE, ask_again, is_another, plain_direction
from quizroom.questions.build import build_item
from quizroom.questions.deck import ALL_FORMATS, CannotDeal, DealPlan, deal_from
from quizroom.questions.families import asks_of
from quizroom.questions.model import FAMILIES, Family, Item
from quizroom.questions.rules import breaches
from quizroom.questions.syllabus import Syllabus, syllabus_of
from tests.service.courses import knowledge

BOTH_WAYS: tuple[Family, ...] = ("origin", "insertion", "action", "nerve", "compartment", "name")


def syllabus(course: str) -> Syllabus:
    return syllabus_of(knowledge(), knowledge().courses[course])


def dealt(course: str, family: Family, *, seed: int = 1) -> tuple[Item, ...]:
    plan = DealPlan(families=(family,), rounds=6, seed=seed, formats=ALL_FORMATS)
    try:
        return deal_from(syllabus(course), plan)
    except CannotDeal:
        return ()


def cases() -> list[tuple[str, Family]]:
    courses = knowledge().courses.values()
    return [(course.id, family) for course in courses for family in FAMILIES if family in course.families]


@pytest.mark.parametrize("course,family", cases())
def test_what_is_asked_again_is_about_the_same_fact(course: str, family: Family) -> None:
    for item in dealt(course, family):
        again = ask_again(syllabus(course), item, seed=7)
        assert set(again.facts) <= set(item.facts)
        assert set(again.facts) == set(item.facts) or family not in SINGLE
        assert set(again.muscles) <= syllabus(course).on_list | set(item.muscles)


@pytest.mark.parametrize("family", BOTH_WAYS)
def test_a_single_fact_is_asked_the_other_way_round(family: Family) -> None:
    course = "upper_limb_regional"
    pairs = [(item, ask_again(syllabus(course), item, seed=3)) for item in dealt(course, family)]
    assert pairs
    turned = sum(plain_direction(one.direction) != plain_direction(other.direction) for one, other in pairs)
    assert turned >= len(pairs) - 1


def test_it_is_hardly_ever_the_same_item() -> None:
    same: Counter[bool] = Counter()
    for course, family in cases():
        for item in dealt(course, family):
            same[not is_another(ask_again(syllabus(course), item, seed=5), item)] += 1
    assert same[True] <= 0.05 * same.total()


@settings(max_examples=40)
@given(st.sampled_from(cases()), st.integers(0, 2**31))
def test_the_same_seed_asks_the_same(case: tuple[str, Family], seed: int) -> None:
    course, family = case
    for item in dealt(course, family)[:2]:
        one = ask_again(syllabus(course), item, seed)
        assert one == ask_again(syllabus(course), item, seed)
        assert list(breaches(one)) == []


def asked_this_way(item: Item, way: str) -> Iterator[Item]:
    """What rests on the same facts in a direction; three look-alikes give the same options each time."""
    list_ = syllabus("upper_limb_regional")
    for ask in (*asks_of(list_, "nerve"), *asks_of(list_, "look_alike")):
        if frozenset(ask.facts) == frozenset(item.facts) and plain_direction(ask.direction) == way:
            made = (build_item(list_, ask, form, seed) for form in ask.formats for seed in range(2, 6))
            yield from (one for one in made if one is not None)


def test_a_wanted_direction_is_kept_by_another_item() -> None:
    for item in dealt("upper_limb_regional", "nerve"):
        way = plain_direction(item.direction)
        again = ask_again(syllabus("upper_limb_regional"), item, seed=2, direction=way)
        kept = plain_direction(again.direction) == way or not is_another(again, item)
        assert kept or not any(is_another(one, item) for one in asked_this_way(item, way))


def test_one_row_of_a_matching_can_be_asked_alone() -> None:
    for item in dealt("upper_limb_regional", "matching"):
        fact = item.facts[:1]
        again = ask_again(syllabus("upper_limb_regional"), item, seed=4, about=fact)
        assert set(again.facts) == set(fact)
        assert again.format != "matching"


def test_only_wanted_formats_are_dealt() -> None:
    for item in dealt("upper_limb_regional", "nerve"):
        again = ask_again(syllabus("upper_limb_regional"), item, seed=4, formats=("one_best",))
        assert again.format in ("one_best", item.format)


def test_of_a_list_that_does_not_hold_it_the_item_itself_is_left() -> None:
    item = next(item for item in dealt("regional_gross_anatomy", "nerve") if "trapezius" not in item.muscles)
    other = next(
        one
        for one in dealt("kinesiology", "matching")
        if not any(ask.facts == one.facts for ask in asks_of(syllabus("intro_ap"), "matching"))
    )
    assert ask_again(syllabus("intro_ap"), item, seed=1) == item
    assert set(ask_again(syllabus("intro_ap"), other, seed=1).facts) <= set(other.facts)
