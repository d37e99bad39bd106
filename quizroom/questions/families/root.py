"""Root: a main spinal segment of a muscle, and the muscle of a segment.

Books differ by a segment nearly everywhere, so only main segments are asked for, and neither a segment that
is recorded at all nor its neighbours ever stand as wrong options.
"""

from collections.abc import Iterator
from dataclasses import replace

from quizroom.questions.ask import Ask
from quizroom.questions.asking import ask_for_muscle, ask_for_value
from quizroom.questions.syllabus import Syllabus, Unit, certain_values, claims_of, units
from quizroom.questions.words import unit_text
from quizroom.questions.wrong_segments import segment_ranks, segments_around


def root_asks(syllabus: Syllabus) -> Iterator[Ask]:
    """All asks about main segments, in both directions; cranial nerves have none."""
    for unit in units(syllabus, "root"):
        yield from _from_muscle(syllabus, unit)
    for muscle in syllabus.muscles:
        for segment in certain_values(syllabus, "root", Unit(muscle)):
            yield ask_for_muscle(
                syllabus,
                family="root",
                relation="root",
                direction="segment_to_muscle",
                value=segment,
                unit=Unit(muscle),
                stem=f"Of which of these muscles is {segment} a main spinal segment?",
            )


def _from_muscle(syllabus: Syllabus, unit: Unit) -> Iterator[Ask]:
    recorded = {claim.value for claim in claims_of(syllabus, "root", unit)}
    beside = frozenset[str]().union(*map(syllabus.tables["root"].reach, recorded))
    text = unit_text(syllabus.words, unit.muscle, unit.part)
    for segment in certain_values(syllabus, "root", unit):
        ask = ask_for_value(
            syllabus,
            family="root",
            relation="root",
            kind="segment",
            unit=unit,
            value=segment,
            stem=f"Which of these is a main spinal segment of {text}?",
        )
        yield replace(ask, barred=beside, ranks=segment_ranks, pick=segments_around)
