"""Name: what the name of a muscle means, and which muscle a meaning names."""

from collections.abc import Iterator
from dataclasses import replace

from quizroom.questions.ask import Ask
from quizroom.questions.asking import ask_for_muscle, ask_for_value
from quizroom.questions.grammar import capitalised
from quizroom.questions.model import Reason
from quizroom.questions.ranks import Rank
from quizroom.questions.syllabus import Syllabus, Unit, certain_values, usual_values
from quizroom.questions.words import concept_text, plain_meaning


def name_asks(syllabus: Syllabus) -> Iterator[Ask]:
    """All asks about the meaning of names, in both directions."""
    for muscle in syllabus.muscles:
        for meaning in certain_values(syllabus, "meaning", Unit(muscle)):
            yield from _both_ways(syllabus, Unit(muscle), meaning)


def _both_ways(syllabus: Syllabus, unit: Unit, meaning: str) -> Iterator[Ask]:
    name = concept_text(syllabus.words, "muscle", unit.muscle)
    meant = concept_text(syllabus.words, "meaning", meaning)
    ask = ask_for_value(
        syllabus,
        family="name",
        relation="meaning",
        kind="meaning",
        unit=unit,
        value=meaning,
        stem=f'Which of these does the name "{name}" mean?',
    )
    yield replace(ask, ranks=_meaning_ranks, tell=_reason)
    back = ask_for_muscle(
        syllabus,
        family="name",
        relation="meaning",
        direction="meaning_to_muscle",
        value=meaning,
        unit=unit,
        stem=f'The name of which of these muscles means "{meant}"?',
    )
    yield replace(back, tell=_reason)


def _meaning_ranks(syllabus: Syllabus, ask: Ask) -> Iterator[Rank]:
    kinship = syllabus.kinship
    muscle = syllabus.catalogue.muscles[ask.muscles[0]]
    groups: tuple[Rank, ...] = (
        ("look_alike", kinship.lookalikes.get(muscle.id, ())),
        ("same_compartment", kinship.by_compartment[muscle.compartment]),
        ("serial_homologue", kinship.homologous_muscles(muscle.id)),
        ("same_region", kinship.by_region[muscle.region]),
        ("same_region", kinship.beside_region.get(muscle.region, ())),
    )
    for source, muscles in groups:
        yield source, usual_values(syllabus, "meaning", muscles)


def _reason(syllabus: Syllabus, ask: Ask, concept: str) -> Reason:
    """What the name of a muscle means, with the words that it is made of."""
    muscle = syllabus.catalogue.muscles[ask.muscles[0] if concept in ask.key else concept]
    name = capitalised(concept_text(syllabus.words, "muscle", muscle.id))
    plain = plain_meaning(muscle)
    rest = muscle.meaning.removeprefix("the ").removeprefix(plain)
    return Reason(
        text=f'{name} means "{plain}"{rest.rstrip(".")}.',
        facts=(f"{muscle.id}/meaning/-/-",),
        sources=muscle.sources,
    )
