"""Muscles that do the opposite of one another."""

from collections.abc import Iterator

from quizroom.questions.syllabus import Syllabus, Unit, claims_of


def opposite_of(syllabus: Syllabus, action: str) -> str:
    """The opposite movement at the same joint."""
    joint, _, movement = action.partition(".")
    return f"{joint}.{syllabus.catalogue.movements[movement].antagonist}"


def opponents_of(syllabus: Syllabus, muscle: str) -> Iterator[str]:
    """The prime movers of the opposites of what a muscle leads, or of what it does if it leads nothing."""
    led = [claim.value for claim in claims_of(syllabus, "prime", Unit(muscle)) if claim.usual]
    done = [claim.value for claim in claims_of(syllabus, "action", Unit(muscle)) if claim.usual]
    for action in led or done:
        claims = syllabus.tables["prime"].by_value.get(opposite_of(syllabus, action), ())
        yield from (claim.muscle for claim in claims if claim.usual and claim.muscle != muscle)
