"""Compartment: the group to which a muscle belongs, and a muscle of a group; not where books differ."""

from collections.abc import Iterator
from dataclasses import replace

from quizroom.questions.ask import Ask
from quizroom.questions.asking import ask_for_muscle, ask_for_value
from quizroom.questions.grammar import agreeing, definite
from quizroom.questions.syllabus import Syllabus, Unit, certain_values
from quizroom.questions.words import concept_text, unit_text
from quizroom.questions.wrong_compartments import compartment_ranks


def compartment_asks(syllabus: Syllabus) -> Iterator[Ask]:
    """All asks about compartments, in both directions."""
    for muscle in syllabus.muscles:
        for compartment in certain_values(syllabus, "compartment", Unit(muscle)):
            yield from _both_ways(syllabus, Unit(muscle), compartment)


def _both_ways(syllabus: Syllabus, unit: Unit, compartment: str) -> Iterator[Ask]:
    text = unit_text(syllabus.words, unit.muscle, "")
    ask = ask_for_value(
        syllabus,
        family="compartment",
        relation="compartment",
        kind="compartment",
        unit=unit,
        value=compartment,
        stem=f"To which of these groups {agreeing(text, 'does', 'do')} {text} belong?",
    )
    yield replace(ask, ranks=compartment_ranks)
    name = concept_text(syllabus.words, "compartment", compartment)
    group = definite(name)
    yield ask_for_muscle(
        syllabus,
        family="compartment",
        relation="compartment",
        direction="compartment_to_muscle",
        value=compartment,
        unit=unit,
        stem=f"Which of these muscles {agreeing(name, 'belongs to', 'is one of')} {group}?",
    )
