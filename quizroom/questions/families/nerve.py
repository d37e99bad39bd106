"""Nerve: which nerve supplies a muscle, and which muscle a nerve supplies."""

from collections.abc import Iterator

from quizroom.questions.ask import Ask
from quizroom.questions.asking import (
    ask_for_muscle,
    ask_for_value,
    has_one_muscle,
    has_one_value,
    muscles_and_heads,
)
from quizroom.questions.grammar import agreeing, definite
from quizroom.questions.syllabus import Syllabus, Unit, certain_values, units
from quizroom.questions.traits import is_asked_nerve
from quizroom.questions.words import concept_text, unit_text


def nerve_asks(syllabus: Syllabus) -> Iterator[Ask]:
    """All asks about motor nerves, in both directions; roots are another matter."""
    for unit in units(syllabus, "nerve"):
        yield from _from_muscle(syllabus, unit)
    for unit, nerve in muscles_and_heads(syllabus, "nerve"):
        if is_asked_nerve(syllabus.catalogue, nerve):
            yield _from_nerve(syllabus, unit, nerve)


def _from_muscle(syllabus: Syllabus, unit: Unit) -> Iterator[Ask]:
    text = unit_text(syllabus.words, unit.muscle, unit.part)
    for nerve in _asked_nerves(syllabus, unit):
        # Of a branch, its parent would be no wrong answer: only nerves are asked to be typed.
        typed = syllabus.catalogue.nerves[nerve].kind == "nerve" and has_one_value(syllabus, "nerve", unit)
        yield ask_for_value(
            syllabus,
            family="nerve",
            relation="nerve",
            kind="nerve",
            unit=unit,
            value=nerve,
            stem=f"Which of these nerves supplies {text}?",
            wording=f"Name the nerve that supplies {text}." if typed else "",
        )


def _from_nerve(syllabus: Syllabus, unit: Unit, nerve: str) -> Ask:
    name = concept_text(syllabus.words, "nerve", nerve)
    does, supplies = agreeing(name, "does", "do"), agreeing(name, "supplies", "supply")
    typed = not unit.part and has_one_muscle(syllabus, "nerve", nerve)
    return ask_for_muscle(
        syllabus,
        family="nerve",
        relation="nerve",
        direction="nerve_to_head" if unit.part else "nerve_to_muscle",
        value=nerve,
        unit=unit,
        stem=f"Which of these {'' if unit.part else 'muscles '}{does} {definite(name)} supply?",
        wording=f"Name the muscle on your list that {definite(name)} {supplies}." if typed else "",
    )


def _asked_nerves(syllabus: Syllabus, unit: Unit) -> tuple[str, ...]:
    values = certain_values(syllabus, "nerve", unit)
    return tuple(nerve for nerve in values if is_asked_nerve(syllabus.catalogue, nerve))
