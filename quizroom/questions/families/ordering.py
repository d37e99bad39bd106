"""Ordering: three to five things from proximal to distal, trunk to branch, superficial to deep.

Only strict orders that no recorded reading could turn round.
"""

from collections.abc import Iterator

from quizroom.questions.ask import Ask
from quizroom.questions.layers import layer_asks
from quizroom.questions.paths import artery_path_asks, nerve_path_asks
from quizroom.questions.stations import insertion_order_asks, muscle_way_asks
from quizroom.questions.syllabus import Syllabus


def ordering_asks(syllabus: Syllabus) -> Iterator[Ask]:
    """All orders of what the course examines."""
    families = syllabus.course.families
    if "nerve" in families:
        yield from nerve_path_asks(syllabus)
    if "artery" in families:
        yield from artery_path_asks(syllabus)
    if "insertion" in families:
        yield from insertion_order_asks(syllabus)
        if "origin" in families and "joint" in families:
            yield from muscle_way_asks(syllabus)
    yield from layer_asks(syllabus)
