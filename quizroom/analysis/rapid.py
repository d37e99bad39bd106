"""Answers given faster than anybody can read: rapid guesses, which say nothing about the question."""

from quizroom.questions.model import Item
from quizroom.questions.timing import WORDS_PER_MINUTE
from quizroom.room.clock import milliseconds_between
from quizroom.room.state import Answer, Round

LEAST_MS = 500
PART_OF_READING = 4
"""A quarter of the time to read (the trade's rule after an idea of Wise & Kong 2005, from memory)."""


def rapid_below_ms(item: Item) -> float:
    """Answers that come sooner after the opening, in ms, are rapid guesses.

    Half a second, or a quarter of the time in which stem and options are read once if that is longer.
    """
    texts = (item.stem, *(one.text for one in item.stems), *(one.text for one in item.options))
    words = sum(len(text.split()) for text in texts)
    return max(LEAST_MS, 60_000 * words / WORDS_PER_MINUTE / PART_OF_READING)


def is_rapid(current: Round, answer: Answer) -> bool:
    """Whether an answer came too soon after its round was opened, by the server's clock."""
    took_ms = answer.took_ms
    if took_ms is None:
        took_ms = milliseconds_between(current.opened_at, answer.at)
    return took_ms < rapid_below_ms(current.item)
