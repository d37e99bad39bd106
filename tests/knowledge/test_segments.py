"""Spinal segments."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from quizroom.knowledge.segments import SEGMENTS, in_order, place_of, span

DASH = "\N{EN DASH}"


@pytest.mark.parametrize(
    "segments, printed",
    [
        ((), ""),
        (("C6",), "C6"),
        (("C7", "C5", "C6"), f"C5{DASH}C7"),
        (("C8", "T1"), f"C8{DASH}T1"),
        (("C5", "C7"), "C5, C7"),
        (("T12", "L1", "L3"), f"T12{DASH}L1, L3"),
    ],
)
def test_segments_are_printed_as_ranges(segments: tuple[str, ...], printed: str) -> None:
    assert span(segments) == printed


@given(st.sets(st.sampled_from(SEGMENTS)))
def test_order_is_from_the_neck_down_and_loses_nothing(segments: set[str]) -> None:
    assert set(in_order(segments)) == segments
    assert list(place_of(segments)) == sorted(place_of(segments))
