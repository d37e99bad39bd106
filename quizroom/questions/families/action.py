"""Action: which movement does a muscle produce, and which muscle produces a movement."""

from collections.abc import Iterator

from quizroom.questions.ask import Ask
from quizroom.questions.asking import ask_for_muscle, ask_for_value, muscles_and_heads
from quizroom.questions.grammar import agreeing
from quizroom.questions.syllabus import Syllabus, Unit, certain_values, units
from quizroom.questions.words import action_text, place_text, unit_text

_FEWEST_MOVEMENTS = 4
"""A joint with fewer movements makes no list of options: there the joint is asked along."""


def action_asks(syllabus: Syllabus) -> Iterator[Ask]:
    """All asks about actions, in both directions."""
    for unit in units(syllabus, "action"):
        for action in certain_values(syllabus, "action", unit):
            if len(syllabus.catalogue.joints[action.partition(".")[0]].movements) >= _FEWEST_MOVEMENTS:
                yield _movement_of(syllabus, unit, action)
            yield _action_of(syllabus, unit, action)
    for unit, action in muscles_and_heads(syllabus, "action"):
        which = "Which of these" if unit.part else "Which of these muscles"
        yield ask_for_muscle(
            syllabus,
            family="action",
            relation="action",
            direction="action_to_head" if unit.part else "action_to_muscle",
            value=action,
            unit=unit,
            stem=f"{which} produces {action_text(syllabus.words, action)}?",
        )


def _movement_of(syllabus: Syllabus, unit: Unit, action: str) -> Ask:
    text = unit_text(syllabus.words, unit.muscle, unit.part)
    do = agreeing(text, "does", "do")
    place = place_text(syllabus.words, action.partition(".")[0])
    produced = f"{place} {do} {text} produce" if place.startswith("of ") else f"{do} {text} produce {place}"
    return ask_for_value(
        syllabus,
        family="action",
        relation="action",
        kind="movement",
        unit=unit,
        value=action,
        stem=f"Which of these movements {produced}?",
    )


def _action_of(syllabus: Syllabus, unit: Unit, action: str) -> Ask:
    text = unit_text(syllabus.words, unit.muscle, unit.part)
    return ask_for_value(
        syllabus,
        family="action",
        relation="action",
        kind="action",
        unit=unit,
        value=action,
        stem=f"Which of these is an action of {text}?",
    )
