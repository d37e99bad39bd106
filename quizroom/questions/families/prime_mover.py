"""Prime mover: which muscle leads a movement, and which movement a muscle leads."""

from collections.abc import Iterator

from quizroom.questions.ask import Ask
from quizroom.questions.asking import ask_for_muscle, ask_for_value, muscles_and_heads
from quizroom.questions.grammar import agreeing
from quizroom.questions.syllabus import Syllabus, certain_values, units
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
    for unit, action in muscles_and_heads(syllabus, "prime"):
        which = "Which of these" if unit.part else "Which of these muscles"
        yield ask_for_muscle(
            syllabus,
            family="prime_mover",
            relation="prime",
            direction="action_to_head" if unit.part else "action_to_muscle",
            value=action,
            unit=unit,
            stem=f"{which} is a prime mover of {action_text(syllabus.words, action)}?",
        )
