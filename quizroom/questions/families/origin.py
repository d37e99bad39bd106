"""Origin: where does a muscle or head arise, and what arises there."""

from collections.abc import Iterator

from quizroom.questions.ask import Ask
from quizroom.questions.ends import asks_of_end
from quizroom.questions.syllabus import Syllabus


def origin_asks(syllabus: Syllabus) -> Iterator[Ask]:
    """All asks about origins, in both directions."""
    yield from asks_of_end(syllabus, "origin")
