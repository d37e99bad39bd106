"""Artery: which of these supplies a muscle. Books list several, so none is "the" artery."""

from collections.abc import Iterator

from quizroom.questions.ask import Ask
from quizroom.questions.asking import ask_for_value
from quizroom.questions.syllabus import Syllabus, certain_values, units
from quizroom.questions.words import unit_text


def artery_asks(syllabus: Syllabus) -> Iterator[Ask]:
    """All asks about arteries, from the muscle alone: no muscle is the only one of its artery."""
    for unit in units(syllabus, "artery"):
        text = unit_text(syllabus.words, unit.muscle, unit.part)
        for artery in certain_values(syllabus, "artery", unit):
            yield ask_for_value(
                syllabus,
                family="artery",
                relation="artery",
                kind="artery",
                unit=unit,
                value=artery,
                stem=f"Which of these arteries supplies {text}?",
            )
