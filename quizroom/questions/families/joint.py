"""Joint: which joints does a muscle cross, and which muscle crosses a joint."""

from collections.abc import Iterator
from dataclasses import replace
from functools import lru_cache

from quizroom.questions.ask import Ask
from quizroom.questions.asking import ask_for_muscle, ask_for_value, muscles_and_heads
from quizroom.questions.claim import Claim
from quizroom.questions.grammar import agreeing
from quizroom.questions.syllabus import Syllabus, Unit, certain_values, claims_of, units
from quizroom.questions.words import concept_text, is_true_joint, unit_text


def joint_asks(syllabus: Syllabus) -> Iterator[Ask]:
    """All asks about joints crossed, in both directions, for joints at which the muscle acts."""
    for unit in units(syllabus, "crossing"):
        text = unit_text(syllabus.words, unit.muscle, unit.part)
        for joint in _joints(syllabus, unit):
            yield ask_for_value(
                syllabus,
                family="joint",
                relation="crossing",
                kind="joint",
                unit=unit,
                value=joint,
                stem=f"Which of these {agreeing(text, 'does', 'do')} {text} cross?",
            )
    for unit, joint in muscles_and_heads(syllabus, "crossing"):
        if joint not in _joints(syllabus, unit):
            continue
        which = "Which of these" if unit.part else "Which of these muscles"
        ask = ask_for_muscle(
            syllabus,
            family="joint",
            relation="crossing",
            direction="joint_to_head" if unit.part else "joint_to_muscle",
            value=joint,
            unit=unit,
            stem=f"{which} crosses the {concept_text(syllabus.words, 'joint', joint)}?",
        )
        yield replace(ask, barred=ask.barred | _crossing_none(syllabus))


@lru_cache(maxsize=8)
def _crossing_none(syllabus: Syllabus) -> frozenset[str]:
    """Muscles and heads that cross no joint at all, as a sphincter: nobody takes them for one that does."""
    table, muscles = syllabus.tables["crossing"].by_muscle, syllabus.catalogue.muscles.values()
    parts = ((one.id, part) for one in muscles for part in ("", *(each.id for each in one.parts)))
    return frozenset(
        Unit(muscle, part).id
        for muscle, part in parts
        if not any(_is_told(syllabus, claim, part) for claim in table.get(muscle, ()))
    )


def _is_told(syllabus: Syllabus, claim: Claim, part: str) -> bool:
    """Whether a claim is of a true joint that the whole muscle, or this part of it, crosses."""
    is_of_part = not part or claim.part in ("", part)
    return claim.usual and is_of_part and is_true_joint(syllabus.catalogue.joints[claim.value])


def _joints(syllabus: Syllabus, unit: Unit) -> tuple[str, ...]:
    """Joints crossed at which the unit also acts: those that a class speaks of."""
    acting = {claim.value.partition(".")[0] for claim in claims_of(syllabus, "action", unit) if claim.usual}
    joints = (syllabus.catalogue.joints[one] for one in certain_values(syllabus, "crossing", unit))
    return tuple(joint.id for joint in joints if joint.id in acting and is_true_joint(joint))
