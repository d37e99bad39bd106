"""Time for a round: the trade's rule of thumb (common practice, no source) with its own example."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from quizroom.questions.model import Format
from quizroom.questions.timing import STEPS, raw_seconds, rounded_up, seconds_for

FORMATS: tuple[Format, ...] = ("one_best", "pick_n", "typed", "free_list", "ordering", "matching")


def test_twenty_five_words_and_four_options_take_39_seconds_and_so_45() -> None:
    raw = raw_seconds(words=25, options=4, format_="one_best", pick=1)
    assert raw == pytest.approx(17 + 10 + 12, abs=0.2)
    assert rounded_up(raw) == 45


def test_words_of_stem_and_options_are_counted() -> None:
    assert seconds_for("word " * 5, ["word " * 5] * 4, "one_best", 1) == rounded_up(
        raw_seconds(words=25, options=4, format_="one_best", pick=1)
    )


def test_typing_adds_fifteen_seconds_and_each_member_place_or_row_ten() -> None:
    plain = raw_seconds(words=10, options=0, format_="one_best", pick=3)
    more = {one: raw_seconds(words=10, options=0, format_=one, pick=3) - plain for one in FORMATS}
    assert more == pytest.approx(
        {"one_best": 0, "pick_n": 30, "typed": 15, "free_list": 45, "ordering": 30, "matching": 30}
    )


@given(st.floats(min_value=0, max_value=120))
def test_a_limit_is_rounded_up_to_a_step(seconds: float) -> None:
    assert rounded_up(seconds) in STEPS
    assert rounded_up(seconds) >= seconds
    assert all(step < seconds for step in STEPS if step < rounded_up(seconds))


def test_nothing_lasts_longer_than_two_minutes() -> None:
    assert rounded_up(500) == 120


@given(st.integers(0, 60), st.integers(0, 10), st.sampled_from(FORMATS), st.integers(1, 6))
def test_more_to_read_never_shortens_a_round(words: int, options: int, format_: Format, pick: int) -> None:
    shorter = raw_seconds(words=words, options=options, format_=format_, pick=pick)
    assert raw_seconds(words=words + 1, options=options, format_=format_, pick=pick) > shorter
    assert raw_seconds(words=words, options=options + 1, format_=format_, pick=pick) > shorter
