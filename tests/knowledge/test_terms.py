"""Typed terms made comparable (rules of marking typed answers: common practice, no source)."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from quizroom.knowledge.terms import normalise


@pytest.mark.parametrize(
    "typed, listed",
    [
        ("M. Biceps Brachii", "biceps brachii"),
        ("the biceps-brachii muscle", "biceps brachii"),
        ("musculus trapezius", "trapezius"),
        ("musculi rhomboidei", "rhomboidei"),
        ("Rhomboids", "rhomboid"),
        ("spinous processes", "spinous process"),
        ("axillary arteries", "axillary artery"),
        ("cervical vertebrae", "cervical vertebra"),
        ("head of ulna", "head of the ulna"),
        ("tuberculum május", "tuberculum majus"),
        ("Lister's tubercle", "listers tubercle"),
        ("  radial   nerve ", "radial nerve"),
    ],
)
def test_writings_of_one_term_are_one(typed: str, listed: str) -> None:
    assert normalise(typed) == normalise(listed)


@pytest.mark.parametrize(
    "one, other",
    [
        ("abductor", "adductor"),
        ("ulna", "ulnar"),
        ("ilium", "ileum"),
        ("trapezius", "trapezium"),
        ("teres major", "teres minor"),
        ("brachialis", "brachial"),
    ],
)
def test_different_terms_stay_different(one: str, other: str) -> None:
    assert normalise(one) != normalise(other)


@given(st.text())
def test_normalising_twice_changes_nothing_more(text: str) -> None:
    assert normalise(normalise(text)) == normalise(text)
