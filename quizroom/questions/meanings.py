"""Asks about what a movement word means, against the words it is mixed up with."""

from collections.abc import Iterator

from quizroom.knowledge.model import Movement
from quizroom.questions.ask import Ask
from quizroom.questions.grammar import capitalised
from quizroom.questions.model import Reason
from quizroom.questions.same_movement import action_overlap
from quizroom.questions.syllabus import Syllabus
from quizroom.questions.words import concept_text

MEANING = "meaning_to_movement"


def meaning_asks(syllabus: Syllabus) -> Iterator[Ask]:
    """One ask for each movement of a look-alike set that a muscle on the list leads."""
    for movement in syllabus.catalogue.movements.values():
        alike = syllabus.kinship.lookalikes.get(movement.id, ())
        action, muscle = _led(syllabus, movement.id)
        if not alike or not muscle:
            continue
        joint = action.partition(".")[0]
        barred = action_overlap(action)
        yield Ask(
            family="look_alike",
            direction=MEANING,
            subject=movement.id,
            relation="action",
            kind="movement",
            key=(action,),
            barred=barred,
            facts=(_fact(movement.id),),
            muscles=(muscle,),
            unit=(muscle, ""),
            stem=f"Which of these {_plain(movement)}?",
            leads=tuple(f"{joint}.{one}" for one in alike if f"{joint}.{one}" not in barred),
        )


def reason_of_meaning(syllabus: Syllabus, action: str) -> Reason:
    """What a movement word means."""
    movement = action.rpartition(".")[2]
    name = capitalised(concept_text(syllabus.words, "movement", movement))
    sets = (one for one in syllabus.catalogue.lookalikes.values() if movement in one.members)
    sources = tuple(dict.fromkeys(source for one in sets for source in one.sources))
    text = f"{name} {syllabus.catalogue.movements[movement].meaning}."
    return Reason(text=text, facts=(_fact(movement),), sources=sources)


def _fact(movement: str) -> str:
    return f"{movement}/meaning/-/-"


def _plain(movement: Movement) -> str:
    """The meaning without what is added for one place of the body."""
    return movement.meaning.partition(";")[0]


def _led(syllabus: Syllabus, movement: str) -> tuple[str, str]:
    """An action with this movement and the first muscle on the list that leads it; empty if there is none."""
    for muscle in syllabus.muscles:
        for claim in syllabus.tables["prime"].by_muscle.get(muscle, ()):
            if claim.certain and claim.value.partition(".")[2] == movement:
                return claim.value, muscle
    return "", ""
