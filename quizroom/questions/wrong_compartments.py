"""Wrong compartments: those of look-alikes, of antagonists, of muscles of sibling nerves, and nearby ones."""

from collections.abc import Iterable, Iterator

from quizroom.questions.ask import Ask
from quizroom.questions.kindred import kindred_values
from quizroom.questions.opponents import opponents_of
from quizroom.questions.ranks import Rank
from quizroom.questions.syllabus import Syllabus


def compartment_ranks(syllabus: Syllabus, ask: Ask) -> Iterator[Rank]:
    """The ranked sources for a compartment."""
    kinship = syllabus.kinship
    muscle = syllabus.catalogue.muscles[ask.muscles[0]]
    siblings = kinship.siblings_of_nerves(muscle)
    supplied = (
        claim.muscle
        for nerve in siblings
        for claim in syllabus.tables["nerve"].by_value.get(nerve, ())
        if claim.usual
    )
    yield "look_alike", _compartments(syllabus, kinship.lookalikes.get(muscle.id, ()))
    yield "antagonist", _compartments(syllabus, opponents_of(syllabus, muscle.id))
    yield "sibling_nerve", _compartments(syllabus, supplied)
    yield from kindred_values(syllabus, "compartment", muscle.id)
    yield "serial_homologue", kinship.homologous_compartments(muscle.compartment)
    yield "same_region", kinship.compartments_by_region.get(muscle.region, ())
    yield "same_region", _compartments(syllabus, kinship.beside_region.get(muscle.region, ()))


def _compartments(syllabus: Syllabus, muscles: Iterable[str]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(syllabus.catalogue.muscles[muscle].compartment for muscle in muscles))
