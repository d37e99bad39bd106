"""Antagonist: the opposite of a movement, and the muscle that opposes another in a movement at a joint."""

from collections.abc import Iterator
from dataclasses import replace

from quizroom.questions.ask import Ask
from quizroom.questions.asking import ask_for_muscle
from quizroom.questions.claim import Claim
from quizroom.questions.grammar import capitalised
from quizroom.questions.kindred import kindred_values
from quizroom.questions.model import Reason
from quizroom.questions.opponents import opposite_of
from quizroom.questions.ranks import Rank
from quizroom.questions.same_movement import action_overlap
from quizroom.questions.syllabus import Syllabus, Unit, certain_values, muscles_not_wrong, units
from quizroom.questions.words import action_text, concept_text, unit_text
from quizroom.questions.wrong_movements import done_actions, joints_nearby, lookalikes_at


def antagonist_asks(syllabus: Syllabus) -> Iterator[Ask]:
    """Opposites of movements, then opponents of muscles. A muscle that does both is no clear opponent."""
    yield from _opposites(syllabus)
    for unit in units(syllabus, "action"):
        for action in certain_values(syllabus, "action", unit):
            yield from _opponents(syllabus, unit, action)


def _opponents(syllabus: Syllabus, unit: Unit, action: str) -> Iterator[Ask]:
    opposite = opposite_of(syllabus, action)
    on_both_sides = muscles_not_wrong(syllabus, "action", action) | {unit.muscle}
    text = unit_text(syllabus.words, unit.muscle, unit.part)
    for claim in syllabus.tables["prime"].by_value.get(opposite, ()):
        if not claim.certain or claim.muscle not in syllabus.on_list or claim.muscle in on_both_sides:
            continue
        ask = ask_for_muscle(
            syllabus,
            family="antagonist",
            relation="action",
            direction="muscle_to_opponent",
            value=opposite,
            unit=Unit(claim.muscle),
            stem=f"Which of these muscles opposes {text} in {action_text(syllabus.words, action)}?",
        )
        yield replace(ask, subject=f"{unit.id}:{action}", barred=ask.barred | {unit.muscle})


def _opposites(syllabus: Syllabus) -> Iterator[Ask]:
    """One ask for each movement that a muscle on the list leads, and whose opposite some muscle produces.

    "Release" or "free vibration" is what is left when a muscle stops: not worth a round.
    """
    led: dict[str, Claim] = {}
    for muscle in syllabus.muscles:
        for claim in syllabus.tables["prime"].by_muscle.get(muscle, ()):
            if claim.certain:
                led.setdefault(claim.value.partition(".")[2], claim)
    done = {value.partition(".")[2] for value in done_actions(syllabus)}
    for movement, claim in led.items():
        if opposite_of(syllabus, claim.value).partition(".")[2] in done:
            yield _opposite(syllabus, movement, claim)


def _opposite(syllabus: Syllabus, movement: str, claim: Claim) -> Ask:
    opposite = opposite_of(syllabus, claim.value)
    name = concept_text(syllabus.words, "movement", movement)
    return Ask(
        family="antagonist",
        direction="movement_to_opposite",
        subject=movement,
        relation="action",
        kind="movement",
        key=(opposite,),
        barred=action_overlap(opposite) | {claim.value},
        facts=(_fact(movement, opposite.partition(".")[2]),),
        muscles=(claim.muscle,),
        unit=(claim.muscle, ""),
        stem=f"Which of these movements is the opposite of {name}?",
        ranks=_movement_ranks,
        tell=_reason,
        tell_why=_why,
    )


def _movement_ranks(syllabus: Syllabus, ask: Ask) -> Iterator[Rank]:
    """Look-alikes of both movements, then what else is done at the joint, then elsewhere."""
    joint, _, opposite = ask.key[0].partition(".")
    for word in (ask.subject, opposite):
        yield "look_alike", lookalikes_at(syllabus, joint, word)
    for source, actions in kindred_values(syllabus, "action", ask.muscles[0]):
        yield source, tuple(one for one in actions if one.partition(".")[0] == joint)
    yield "same_joint", tuple(f"{joint}.{one}" for one in syllabus.catalogue.joints[joint].movements)
    table = syllabus.tables["action"].by_value
    for near in joints_nearby(syllabus, joint):
        done = (one for one in syllabus.catalogue.joints[near].movements if f"{near}.{one}" in table)
        yield "other_joint", tuple(f"{joint}.{one}" for one in done)


def _reason(syllabus: Syllabus, _: Ask, action: str) -> Reason:
    """What a movement is the opposite of."""
    movement = syllabus.catalogue.movements[action.partition(".")[2]]
    name = capitalised(concept_text(syllabus.words, "movement", movement.id))
    opposite = concept_text(syllabus.words, "movement", movement.antagonist)
    sources = _sources(syllabus, movement.id) or _sources(syllabus, movement.antagonist)
    both = (_fact(movement.id, movement.antagonist), _fact(movement.antagonist, movement.id))
    return Reason(text=f"{name} is the opposite of {opposite}.", facts=both, sources=sources)


def _why(syllabus: Syllabus, ask: Ask) -> Reason:
    """The opposite alone: that books differ on a muscle's actions does not touch it."""
    return _reason(syllabus, ask, ask.key[0])


def _fact(movement: str, opposite: str) -> str:
    return f"{movement}/opposite/-/{opposite}"


def _sources(syllabus: Syllabus, movement: str) -> tuple[str, ...]:
    """Those of the first action that rests on the movement."""
    tables = syllabus.tables["action"].by_value
    claims = (claim for value, held in tables.items() if value.endswith(f".{movement}") for claim in held)
    return next((claim.sources for claim in claims), ())
