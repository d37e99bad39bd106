"""Exactly one key, proven: the oracle judges every option of every item that any course list can yield."""

from collections import Counter

import pytest

from quizroom.questions.model import FAMILIES
from quizroom.questions.print import item_as_json
from tests.questions.judging import complaints
from tests.questions.lists import COURSES, examined, items_of_course
from tests.questions.oracle import Oracle
from tests.questions.source_text import read_text

EXPECTED = 20_000


@pytest.mark.parametrize("course", COURSES)
def test_every_key_is_true_and_every_other_option_false_by_all_readings(course: str) -> None:
    text = read_text()
    oracle = Oracle(text, text.courses[course])
    items = items_of_course(course)
    assert [one for item in items for one in complaints(oracle, item_as_json(item))] == []
    assert {item.family for item in items} == set(examined(course))


def test_the_courses_together_examine_every_family() -> None:
    assert {family for course in COURSES for family in examined(course)} == set(FAMILIES)


def test_there_are_as_many_items_as_a_proof_deserves(capsys: pytest.CaptureFixture[str]) -> None:
    items = [item for course in COURSES for item in items_of_course(course)]
    counted = Counter(item.family for item in items)
    options = sum(len(item.options) for item in items)
    with capsys.disabled():
        print(f"\n{counted.total()} items with {options} options judged: {dict(counted)}")  # noqa: T201 -- the proof says how large it is
    assert counted.total() > EXPECTED
