"""Insertion: where does a muscle end, and what ends there."""

from collections.abc import Iterator

from quizroom.questions.ask import Ask
from quizroom.questions.ends import asks_of_end
from quizroom.questions.syllabus import Syllabus


def insertion_asks(syllabus: Syllabus) -> Iterator[Ask]:
    """All asks about insertions, in both directions."""
    yield from asks_of_end(syllabus, "insertion")
