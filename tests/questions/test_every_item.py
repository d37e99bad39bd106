"""Exactly one key, proven: the oracle judges every option of every item that any course list can yield."""

from collections import Counter
from functools import cache
from time import process_time
from typing import NamedTuple

import pytest

from quizroom.questions.model import FAMILIES
from quizroom.questions.print import item_as_json
from tests.questions.judging import complaints
from tests.questions.lists import COURSES, examined, items_of_course
from tests.questions.oracle import Oracle
from tests.questions.source_text import read_text

EXPECTED = 20_000
LONGEST_SECONDS = 60
"""Of the processor, so that it does not hang on what else the machine does."""


class Proof(NamedTuple):
    """What the oracle says of a course list, and how long it took to make the items and to judge them."""

    complaints: list[str]
    seconds: float


@cache
def proof(course: str) -> Proof:
    """Every item of a course list judged."""
    started = process_time()
    text = read_text()
    oracle = Oracle(text, text.courses[course])
    found = [one for item in items_of_course(course) for one in complaints(oracle, item_as_json(item))]
    return Proof(found, process_time() - started)


@pytest.mark.parametrize("course", COURSES)
def test_every_key_is_true_and_every_other_option_false_by_all_readings(course: str) -> None:
    assert proof(course).complaints == []
    assert {item.family for item in items_of_course(course)} == set(examined(course))


def test_the_courses_together_examine_every_family() -> None:
    assert {family for course in COURSES for family in examined(course)} == set(FAMILIES)


def test_there_are_as_many_items_as_a_proof_deserves_and_it_is_quick(
    capsys: pytest.CaptureFixture[str],
) -> None:
    items = [item for course in COURSES for item in items_of_course(course)]
    counted = Counter(item.family for item in items)
    options = sum(len(item.options) for item in items)
    seconds = sum(proof(course).seconds for course in COURSES)
    with capsys.disabled():
        print(  # noqa: T201 -- the proof says how large it is
            f"\n{counted.total()} items with {options} options judged in {seconds:.0f} s: {dict(counted)}"
        )
    assert counted.total() > EXPECTED
    assert seconds < LONGEST_SECONDS
