"""A course's words and rulings."""

from dataclasses import replace

import pytest

from quizroom.knowledge.course import (
    FAMILIES,
    accepted,
    course_muscles,
    keyed,
    ruling,
    standard_term,
    term_for,
)
from quizroom.knowledge.facts import Fact
from quizroom.knowledge.model import Course, HouseRule, Status
from quizroom.questions.model import FAMILIES as DEALT_FAMILIES
from tests.knowledge.tiny import tiny

COURSE = Course(id="c", title="C", muscles=("brachialis", "biceps_brachii"), families=("nerve",))
RADIAL = "brachialis/nerve/-/radial_nerve"


def fact(status: Status) -> Fact:
    return replace(tiny().index.facts[RADIAL], status=status)


@pytest.mark.parametrize("status, taken", [("core", "key"), ("variant", "accept"), ("minority", "bar")])
def test_without_a_house_rule_the_status_decides(status: Status, taken: str) -> None:
    assert ruling(COURSE, fact(status)) == taken


def test_a_house_rule_decides_over_the_status() -> None:
    course = replace(COURSE, house_rules=(HouseRule(fact=RADIAL, ruling="key"),))
    assert keyed(course, fact("minority"))
    assert not keyed(COURSE, fact("variant"))


def test_keyed_and_accepted_facts_make_an_answer_right() -> None:
    assert [accepted(COURSE, fact(status)) for status in ("core", "variant", "minority")] == [
        True,
        True,
        False,
    ]


def test_muscles_come_in_the_order_of_the_list() -> None:
    assert [muscle.id for muscle in course_muscles(tiny(), COURSE)] == ["brachialis", "biceps_brachii"]


@pytest.mark.parametrize(
    "concept, words",
    [
        ("brachialis", "brachialis"),
        ("biceps_brachii/long_head", "long head of biceps brachii"),
        ("ulna.coronoid_process", "coronoid process of the ulna"),
        ("radial_nerve", "radial nerve"),
        ("elbow", "elbow joint"),
        ("flexion", "flexion"),
        ("brachial_artery", "brachial artery"),
        ("ulna", "ulna"),
    ],
)
def test_each_concept_has_its_words(concept: str, words: str) -> None:
    assert standard_term(tiny(), concept) == words


def test_a_course_may_prefer_other_words() -> None:
    course = replace(COURSE, preferred=(("elbow", "cubital joint"),))
    assert term_for(tiny(), course, "elbow") == "cubital joint"
    assert term_for(tiny(), course, "ulna") == "ulna"


def test_no_concept_has_no_words() -> None:
    with pytest.raises(KeyError):
        standard_term(tiny(), "elbows")


def test_the_families_a_course_may_name_are_those_that_can_be_dealt() -> None:
    assert FAMILIES == DEALT_FAMILIES
