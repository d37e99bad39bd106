"""Which item families have facts on a course list."""

from dataclasses import replace

import pytest

from quizroom.knowledge.catalogue import Catalogue
from quizroom.knowledge.checks.families import NEEDS, families_without_facts
from quizroom.knowledge.course import FAMILIES
from quizroom.knowledge.model import Course
from tests.knowledge.entries import act
from tests.knowledge.tiny import biceps, brachialis, tiny

BOTH = Course(id="c", title="C", muscles=("biceps_brachii", "brachialis"), families=FAMILIES)
ONE = replace(BOTH, muscles=("brachialis",))


def has_facts(catalogue: Catalogue, course: Course, family: str) -> bool:
    return families_without_facts(catalogue, replace(course, families=(family,))) == ()


def test_every_family_says_what_it_needs() -> None:
    assert set(NEEDS) == set(FAMILIES)


@pytest.mark.parametrize("family", sorted(set(FAMILIES) - {"odd_one_out", "antagonist", "matching"}))
def test_two_muscles_of_one_nerve_have_facts_for_most_families(family: str) -> None:
    assert has_facts(tiny(), BOTH, family)


@pytest.mark.parametrize("family", ["set", "odd_one_out", "antagonist", "matching"])
def test_a_single_muscle_has_no_company(family: str) -> None:
    assert not has_facts(tiny(), ONE, family)


def test_an_opponent_on_the_list_is_enough_for_the_antagonist() -> None:
    extensor = replace(biceps(), actions=(act("elbow", "extension"),))
    assert has_facts(tiny(muscles=[extensor, brachialis()]), BOTH, "antagonist")


def test_four_muscles_of_which_three_are_alike_have_an_odd_one() -> None:
    more = [replace(brachialis(), id=name, name=name) for name in ("one", "two", "three")]
    course = replace(BOTH, muscles=("biceps_brachii", "one", "two", "three"))
    assert has_facts(tiny(muscles=[biceps(), *more]), course, "odd_one_out")


def test_a_family_that_is_not_known_is_left_to_another_rule() -> None:
    assert has_facts(tiny(), BOTH, "origins")
