"""Reasons about lesions: what of a muscle or movement is cut, and what an injury takes away."""

from dataclasses import replace
from functools import lru_cache

from quizroom.knowledge.anatomy import nerve_descendants
from quizroom.knowledge.anatomy.lesion import EXPECTATION
from quizroom.knowledge.segments import SEGMENTS
from quizroom.knowledge.wording import listed
from quizroom.questions.ask import Ask
from quizroom.questions.explain import reason, reason_of_unit
from quizroom.questions.grammar import agreeing, capitalised, definite, shortened
from quizroom.questions.holders import reason_of_value
from quizroom.questions.lesion_ranks import ABOVE_NERVES
from quizroom.questions.model import Reason
from quizroom.questions.syllabus import Syllabus, Unit, claims_of
from quizroom.questions.words import action_text, concept_text, injury_text, unit_text, with_article


def reason_of_loss(syllabus: Syllabus, ask: Ask, concept: str) -> Reason:
    """The nerve of a muscle or head, and whether the injury reaches it."""
    muscle, _, part = concept.partition("/")
    unit = Unit(muscle, part)
    supply = reason_of_unit(syllabus, "nerve", unit, focus=ask.value)
    text = unit_text(syllabus.words, muscle, part)
    lost = syllabus.injuries.is_lost(ask.subject, muscle, part)
    outcome = f"{agreeing(text, 'it is', 'they are')} {'lost' if lost else 'spared'}"
    way = _way_from_cut(syllabus, ask.value, unit) if lost else _way_past_cut(syllabus, ask.value, unit)
    return _expected(supply, f"{supply.text.rstrip('.')}{way}: {outcome}.")


def _way_from_cut(syllabus: Syllabus, cut: str, unit: Unit) -> str:
    """That the nerve of a muscle comes from the one that is cut, if they are not the same."""
    values = {claim.value for claim in claims_of(syllabus, "nerve", unit) if claim.usual}
    if len(values) != 1 or cut in values:
        return ""
    return f", which comes from {definite(concept_text(syllabus.words, 'nerve', cut))}"


def _way_past_cut(syllabus: Syllabus, cut: str, unit: Unit) -> str:
    """That a muscle of the nerve that is cut is reached before the cut, or past a trunk that is cut."""
    values = {claim.value for claim in claims_of(syllabus, "nerve", unit) if claim.usual}
    below = nerve_descendants(syllabus.catalogue, cut) | {cut}
    if not values or not values <= below:
        return ""
    if syllabus.catalogue.nerves[cut].kind in ABOVE_NERVES:
        return f", with fibers from {listed(_segments(syllabus, unit))}, which go another way"
    return " by a branch that leaves before the cut"


def _segments(syllabus: Syllabus, unit: Unit) -> list[str]:
    """The spinal segments of a muscle or part by the standard account, from the neck down."""
    rows = syllabus.catalogue.muscles[unit.muscle].nerves
    roots = {
        root for row in rows if row.status == "core" and row.part in ("", unit.part) for root in row.roots
    }
    return [segment for segment in SEGMENTS if segment in roots]


def reason_of_movement(syllabus: Syllabus, ask: Ask, action: str) -> Reason:
    """Who does a movement, and what is left of them."""
    fails = syllabus.injuries.fails(ask.subject, action)
    leads = any(claim.usual for claim in syllabus.tables["prime"].by_value.get(action, ()))
    done = reason_of_value(syllabus, "prime" if leads else "action", action)
    rest = "With this injury it is lost or severely weakened." if fails else "This injury spares it."
    return _expected(done, f"{done.text} {rest}")


def reason_of_injury(syllabus: Syllabus, ask: Ask, injury: str) -> Reason:
    """What an injury takes away."""
    lost = _lost_muscles(syllabus, injury)
    names = [with_article(concept_text(syllabus.words, "muscle", one)) for one in lost]
    what = listed(shortened(names)) if names else "no whole muscle"
    about = _outcome(syllabus, ask, injury)
    text = f"{capitalised(injury_text(syllabus.words, injury))}: a complete lesion paralyzes {what}; {about}."
    asked = ask.muscles if injury in ask.key else ()  # of which but a part may be lost
    resting_on = dict.fromkeys((*lost, *asked))
    claims = (one for muscle in resting_on for one in syllabus.tables["nerve"].by_muscle.get(muscle, ()))
    level = syllabus.catalogue.levels.get(injury)
    held = reason(text, (claim for claim in claims if claim.usual))
    sources = tuple(dict.fromkeys((*(level.sources if level else ()), *held.sources)))
    return _expected(replace(held, sources=sources), text)


@lru_cache(maxsize=2048)
def _lost_muscles(syllabus: Syllabus, injury: str) -> tuple[str, ...]:
    """What is lost as a whole, muscles on the list first."""
    muscles = sorted(syllabus.catalogue.muscles, key=lambda one: one not in syllabus.on_list)
    return tuple(one for one in muscles if syllabus.injuries.is_lost(injury, one))


def _outcome(syllabus: Syllabus, ask: Ask, injury: str) -> str:
    """What becomes of the muscle or movement asked about."""
    if ask.direction == "movement_to_injury":
        suffers = syllabus.injuries.fails(injury, ask.subject)
        what = action_text(syllabus.words, ask.subject)
        return f"{what} is {'lost or severely weakened' if suffers else 'kept'}"
    muscle, _, part = ask.subject.partition("/")
    text = unit_text(syllabus.words, muscle, part)
    lost = syllabus.injuries.is_lost(injury, muscle, part)
    return f"{text} {agreeing(text, 'is', 'are')} {'lost' if lost else 'spared'}"


def _expected(held: Reason, text: str) -> Reason:
    return Reason(text=f"{text} {EXPECTATION}", facts=held.facts, sources=held.sources)
