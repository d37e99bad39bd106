"""Prime mover: which muscle leads a movement, and which movement a muscle leads."""

from collections.abc import Iterator

from quizroom.questions.ask import Ask
from quizroom.questions.asking import ask_for_muscle, ask_for_value
from quizroom.questions.grammar import agreeing
from quizroom.questions.syllabus import Syllabus, Unit, certain_values, units
from quizroom.questions.words import action_text, unit_text


def prime_mover_asks(syllabus: Syllabus) -> Iterator[Ask]:
    """All asks about prime movers, in both directions. Assistants are never options."""
    for unit in units(syllabus, "prime"):
        text = unit_text(syllabus.words, unit.muscle, unit.part)
        movers = agreeing(text, f"is {text} a prime mover", f"are {text} prime movers")
        for action in certain_values(syllabus, "prime", unit):
            yield ask_for_value(
                syllabus,
                family="prime_mover",
                relation="prime",
                kind="action",
                unit=unit,
                value=action,
                stem=f"Of which of these movements {movers}?",
            )
    for muscle in syllabus.muscles:
        for action in certain_values(syllabus, "prime", Unit(muscle)):
            yield ask_for_muscle(
                syllabus,
                family="prime_mover",
                relation="prime",
                direction="action_to_muscle",
                value=action,
                unit=Unit(muscle),
                stem=f"Which of these muscles is a prime mover of {action_text(syllabus.words, action)}?",
            )
