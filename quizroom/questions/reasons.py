"""Which reason belongs to an option, a key or a typed term of an ask."""

from quizroom.knowledge.lexicon import Term
from quizroom.questions.ask import Ask
from quizroom.questions.explain import (
    books_differ,
    reason_of_joint,
    reason_of_unit,
)
from quizroom.questions.grammar import capitalised
from quizroom.questions.holders import reason_of_set, reason_of_value
from quizroom.questions.meanings import MEANING, reason_of_meaning
from quizroom.questions.model import Reason
from quizroom.questions.places import reason_of_bone
from quizroom.questions.syllabus import Syllabus, Unit


def reason_of_option(syllabus: Syllabus, ask: Ask, concept: str) -> Reason:
    """What the option really is: of the key why it is right, of any other what is true of it instead."""
    if ask.tell is not None:
        return ask.tell(syllabus, ask, concept)
    if ask.kind == "bone":
        return reason_of_bone(syllabus, ask.subject, concept)
    if ask.direction == MEANING:
        return reason_of_meaning(syllabus, concept)
    if ask.unit is None:
        muscle, _, part = concept.partition("/")
        return _reason_of_muscle(syllabus, ask, Unit(muscle, part))
    unit = Unit(*ask.unit)
    if ask.relation == "crossing":
        return reason_of_joint(syllabus, unit, concept)
    if concept in ask.key:
        return reason_of_unit(syllabus, ask.relation, unit, focus=concept)
    return reason_of_value(syllabus, ask.relation, concept)


def why_of(syllabus: Syllabus, ask: Ask) -> Reason:
    """Why the key is the key."""
    if ask.tell_why is not None:
        return ask.tell_why(syllabus, ask)
    if len(ask.key) > 1:
        return reason_of_set(syllabus, ask.relation, ask.value, ask.key)
    why = reason_of_option(syllabus, ask, ask.key[0])
    about_muscles = ask.kind != "bone" and ask.direction != MEANING
    differ = books_differ(syllabus, ask.relation, ask.muscles[0]) if about_muscles else ""
    return Reason(text=why.text + differ, facts=why.facts, sources=why.sources)


def reason_of_term(syllabus: Syllabus, ask: Ask, term: Term) -> Reason:
    """What another term denotes, for whoever typed it."""
    if term.concept in syllabus.catalogue.lookalikes:
        return Reason(text=syllabus.catalogue.lookalikes[term.concept].tell)
    if term.kind == "muscle":
        muscle, _, part = term.concept.partition("/")
        return _reason_of_muscle(syllabus, ask, Unit(muscle, part))
    if term.kind == "landmark":
        return reason_of_value(syllabus, "attachment", term.concept)
    if term.kind in ("nerve", "artery"):
        return reason_of_value(syllabus, term.kind, term.concept)
    article = "an" if term.kind == "artery" else "a"
    return Reason(text=f"{capitalised(term.text)} is {article} {term.kind}.")


def _reason_of_muscle(syllabus: Syllabus, ask: Ask, unit: Unit) -> Reason:
    return reason_of_unit(syllabus, ask.relation, unit, focus=ask.value or ask.key[0])
