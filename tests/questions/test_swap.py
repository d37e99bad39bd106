"""One place of a dealt review changed for another question."""

import re
from dataclasses import replace

import pytest

from quizroom.questions.deck import CannotDeal, DealPlan, deal_from, swap
from quizroom.questions.model import Item
from tests.questions.lists import REGIONAL, catalogue, examined, syllabus

PLAN = DealPlan(families=examined(REGIONAL), rounds=8, seed=1)
COURSE = catalogue().courses[REGIONAL]


def review() -> tuple[Item, ...]:
    return deal_from(syllabus(REGIONAL), PLAN)


def test_a_swap_brings_another_question_of_the_same_family() -> None:
    items = review()
    asked = {fact for item in items for fact in item.facts}
    other = swap(catalogue(), COURSE, PLAN, items, 3, seed=99)
    assert other.family == items[3].family
    assert asked.isdisjoint(other.facts)


def test_the_same_seed_swaps_in_the_same_question_and_another_seed_another() -> None:
    items = review()
    other = swap(catalogue(), COURSE, PLAN, items, 3, seed=99)
    assert swap(catalogue(), COURSE, PLAN, items, 3, seed=99) == other
    assert swap(catalogue(), COURSE, PLAN, items, 3, seed=98).id != other.id


def test_a_swap_keeps_clear_of_the_muscles_of_the_other_rounds() -> None:
    items = review()
    others = {muscle for item in (*items[:3], *items[4:]) for muscle in item.muscles}
    assert others.isdisjoint(swap(catalogue(), COURSE, PLAN, items, 3, seed=7).muscles)


def test_when_everything_is_dealt_nothing_can_be_swapped_in() -> None:
    plan = DealPlan(families=("set",), rounds=1000, seed=1, formats=("free_list",))
    with pytest.raises(CannotDeal) as told:
        deal_from(syllabus(REGIONAL), plan)
    found = re.search(r"yields (\d+) questions", str(told.value))
    assert found
    items = deal_from(syllabus(REGIONAL), replace(plan, rounds=int(found[1])))
    with pytest.raises(CannotDeal, match=r"already in the review\.$"):
        swap(catalogue(), COURSE, plan, items, 0, seed=2)
