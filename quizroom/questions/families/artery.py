"""Artery: which of these supplies a muscle, and which muscle one supplies. None is "the" artery of a muscle.

Books list several for a muscle, and none lists all twigs: no muscle of a compartment that the artery is
known to reach is ever called wrong.
"""

from collections.abc import Iterator
from dataclasses import replace

from quizroom.questions.ask import Ask
from quizroom.questions.asking import ask_for_muscle, ask_for_value
from quizroom.questions.grammar import agreeing, definite
from quizroom.questions.syllabus import Syllabus, Unit, certain_values, units
from quizroom.questions.words import concept_text, unit_text


def artery_asks(syllabus: Syllabus) -> Iterator[Ask]:
    """All asks about arteries, in both directions."""
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
    for muscle in syllabus.muscles:
        for artery in certain_values(syllabus, "artery", Unit(muscle)):
            yield _from_artery(syllabus, Unit(muscle), artery)


def _from_artery(syllabus: Syllabus, unit: Unit, artery: str) -> Ask:
    name = concept_text(syllabus.words, "artery", artery)
    ask = ask_for_muscle(
        syllabus,
        family="artery",
        relation="artery",
        direction="artery_to_muscle",
        value=artery,
        unit=unit,
        stem=f"Which of these muscles {agreeing(name, 'does', 'do')} {definite(name)} supply?",
    )
    muscles, kinship = syllabus.catalogue.muscles, syllabus.kinship
    mates = (mate for one in ask.barred for mate in kinship.by_compartment[muscles[one].compartment])
    return replace(ask, barred=ask.barred | frozenset(mates))
