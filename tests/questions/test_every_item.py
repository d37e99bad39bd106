"""Exactly one key, proven: the oracle judges every option of every item that any course list can yield."""

from collections import Counter
from collections.abc import Callable

import pytest

from quizroom.questions.deck import items_of
from quizroom.questions.model import FAMILIES
from quizroom.questions.print import item_as_json
from tests.questions.judging import complaints
from tests.questions.lists import COURSES, examined, syllabus
from tests.questions.oracle import Oracle
from tests.questions.source_text import read_text

SEEDS = (1,)


@pytest.mark.parametrize("course", COURSES)
def test_every_key_is_true_and_every_other_option_false_by_all_readings(
    course: str, record_property: Callable[[str, object], None]
) -> None:
    text = read_text()
    oracle = Oracle(text, text.courses[course])
    found = []
    counted: Counter[str] = Counter()
    for seed in SEEDS:
        for family in examined(course):
            for item in items_of(syllabus(course), family, seed):
                plain = item_as_json(item)
                counted[family] += 1
                found += complaints(oracle, plain)
    record_property("items judged", dict(counted))
    assert found == []
    assert set(counted) == set(examined(course))


def test_the_courses_together_examine_every_family() -> None:
    assert {family for course in COURSES for family in examined(course)} == set(FAMILIES)
