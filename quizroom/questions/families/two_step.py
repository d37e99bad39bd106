"""Two steps: a muscle by what it does at a joint and by its nerve together."""

from collections.abc import Iterator
from dataclasses import replace

from quizroom.questions.ask import Ask
from quizroom.questions.asking import ask_for_muscle
from quizroom.questions.explain import reason_of_unit
from quizroom.questions.grammar import agreeing, definite
from quizroom.questions.model import Reason
from quizroom.questions.ranks import Rank
from quizroom.questions.syllabus import (
    Syllabus,
    Unit,
    certain_claims,
    certain_values,
    muscles_not_wrong,
)
from quizroom.questions.traits import is_asked_nerve
from quizroom.questions.words import action_text, concept_text, unit_text
from quizroom.questions.wrong_muscles import muscle_ranks


def two_step_asks(syllabus: Syllabus) -> Iterator[Ask]:
    """All asks for which both steps are needed: some muscle has the movement alone, some the nerve alone."""
    for muscle in syllabus.muscles:
        for action, nerve in _pairs(syllabus, muscle):
            doing = muscles_not_wrong(syllabus, "action", action)
            supplied = muscles_not_wrong(syllabus, "nerve", nerve)
            if doing - supplied and supplied - doing:
                yield _ask(syllabus, muscle, action, nerve, barred=doing & supplied)


def _pairs(syllabus: Syllabus, muscle: str) -> Iterator[tuple[str, str]]:
    """Actions with the nerves of the same part, or of the whole."""
    parts = [part.id for part in syllabus.catalogue.muscles[muscle].parts] or [""]
    pairs = (
        (action, nerve)
        for part in parts
        for action in certain_values(syllabus, "action", Unit(muscle, part))
        for nerve in certain_values(syllabus, "nerve", Unit(muscle, part))
        if is_asked_nerve(syllabus.catalogue, nerve)
    )
    yield from dict.fromkeys(pairs)


def _ask(syllabus: Syllabus, muscle: str, action: str, nerve: str, *, barred: frozenset[str]) -> Ask:
    supplier = definite(concept_text(syllabus.words, "nerve", nerve))
    what = action_text(syllabus.words, action)
    ask = ask_for_muscle(
        syllabus,
        family="two_step",
        relation="action",
        direction="action_and_nerve_to_muscle",
        value=action,
        unit=Unit(muscle),
        stem=f"Which of these muscles produces {what} and is supplied by {supplier}?",
    )
    by_nerve = certain_claims(syllabus, "nerve", Unit(muscle), nerve)
    facts = dict.fromkeys((*ask.facts, *(claim.id for claim in by_nerve)))
    return replace(
        ask, subject=f"{action}:{nerve}", barred=barred, facts=tuple(facts), ranks=_ranks, tell=_reason
    )


def _ranks(syllabus: Syllabus, ask: Ask) -> Iterator[Rank]:
    """The usual sources: of each those that fail by one step alone come first."""
    action, _, nerve = ask.subject.partition(":")
    doing = muscles_not_wrong(syllabus, "action", action)
    supplied = muscles_not_wrong(syllabus, "nerve", nerve)
    ranks = list(muscle_ranks(syllabus, ask))
    for half in (doing, supplied):
        for source, muscles in ranks:
            yield source, tuple(one for one in muscles if one in half)
    yield from ranks


def _reason(syllabus: Syllabus, ask: Ask, muscle: str) -> Reason:
    """What a muscle does at the joint, and its nerve."""
    action, _, nerve = ask.subject.partition(":")
    does = reason_of_unit(syllabus, "action", Unit(muscle), focus=action)
    supply = reason_of_unit(syllabus, "nerve", Unit(muscle), focus=nerve)
    text = unit_text(syllabus.words, muscle, "")
    rest = supply.text[len(text) :].lstrip()
    return Reason(
        text=f"{does.text.rstrip('.')}; {agreeing(text, 'it', 'they')} {rest}",
        facts=tuple(dict.fromkeys((*does.facts, *supply.facts))),
        sources=tuple(dict.fromkeys((*does.sources, *supply.sources))),
    )
