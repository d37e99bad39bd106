"""Which answers came faster than anybody can read."""

from dataclasses import replace

import pytest

from quizroom.analysis.rapid import is_rapid, rapid_below_ms
from quizroom.room.state import Answer, Round
from tests.room.sample_items import matching, one_best
from tests.room.samples import NOON, after


def opened(stem: str) -> Round:
    item = replace(one_best(), stem=stem, options=())
    return Round(number=1, item=item, opened_at=NOON, closes_at=None, limit_ms=None)


def answered(seconds: float) -> Answer:
    return Answer(choice=("A",), typed=(), at=after(seconds))


@pytest.mark.parametrize(
    # half a second, or a quarter of reading at 175 words a minute (the trade's handbook, from memory)
    "words,ms",
    [(1, 500), (5, 500), (7, 600), (35, 3000)],
)
def test_the_bound_is_half_a_second_or_a_quarter_of_the_time_to_read(words: int, ms: float) -> None:
    assert rapid_below_ms(opened("word " * words).item) == pytest.approx(ms)


def test_options_and_rows_are_read_as_well() -> None:
    bare = replace(matching(), options=(), stems=())
    assert rapid_below_ms(bare) < rapid_below_ms(replace(matching(), stems=())) < rapid_below_ms(matching())


def test_an_answer_is_rapid_below_the_bound_and_not_at_it() -> None:
    assert is_rapid(opened("word"), answered(0.499))
    assert not is_rapid(opened("word"), answered(0.5))
