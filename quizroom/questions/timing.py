"""How long a round lasts, from the words to be read and the work to be done.

Source: the trade's rule of thumb (common practice, no source) over a reading rate of 175 words
a minute, which nearly all adults reach (Brysbaert 2019, from memory); read twice.
"""

from collections.abc import Iterable
from math import ceil

from quizroom.questions.model import TYPED_FORMATS, Format

WORDS_PER_MINUTE = 175
READINGS = 2
SETTLING_SECONDS = 10
SECONDS_PER_OPTION = 3
TYPING_SECONDS = 15
SECONDS_PER_MEMBER = 10
SECONDS_PER_PLACE = 10
"""For each place of an ordering and each row of a matching."""
STEPS = (20, 30, 45, 60, 90, 120)
"""Lengths of a round, in seconds: a limit is rounded up to the next one."""


def seconds_for(stem: str, options: Iterable[str], format_: Format, pick: int) -> int:
    """Seconds for a round of this stem and these option texts; `pick` is the size of a set."""
    texts = tuple(options)
    words = sum(len(text.split()) for text in (stem, *texts))
    return rounded_up(raw_seconds(words=words, options=len(texts), format_=format_, pick=pick))


def raw_seconds(*, words: int, options: int, format_: Format, pick: int) -> float:
    """The limit before rounding: reading, settling, weighing options, typing, members, places."""
    reading = READINGS * 60 * words / WORDS_PER_MINUTE
    typing = TYPING_SECONDS if format_ in TYPED_FORMATS else 0
    members = SECONDS_PER_MEMBER * pick if format_ in ("pick_n", "free_list") else 0
    places = SECONDS_PER_PLACE * pick if format_ in ("ordering", "matching") else 0
    return reading + SETTLING_SECONDS + SECONDS_PER_OPTION * options + typing + members + places


def rounded_up(seconds: float) -> int:
    """The next step that is not shorter; the longest step for anything beyond it."""
    return next((step for step in STEPS if step >= ceil(seconds)), STEPS[-1])
