"""Wrong muscles, movements and injuries beside what a lesion takes away."""

from collections.abc import Iterator

from quizroom.questions.ask import Ask
from quizroom.questions.ranks import Rank
from quizroom.questions.syllabus import Syllabus
from quizroom.questions.wrong_movements import action_ranks
from quizroom.questions.wrong_muscles import muscle_ranks


def lost_ranks(syllabus: Syllabus, ask: Ask) -> Iterator[Rank]:
    """The usual sources; of the same nerve only what leaves it before the level is left to be wrong."""
    yield from muscle_ranks(syllabus, ask)
    claims = syllabus.tables["nerve"].by_value.get(ask.value, ())
    yield "other_level", tuple(claim.muscle for claim in claims if claim.usual)


def spared_ranks(syllabus: Syllabus, ask: Ask) -> Iterator[Rank]:
    """The usual sources, then whatever else is lost."""
    yield from muscle_ranks(syllabus, ask)
    lost = syllabus.injuries.tolls[ask.subject].lost_by_all
    yield "same_region", tuple(sorted({muscle for muscle, _ in lost}))


def movement_loss_ranks(syllabus: Syllabus, ask: Ask) -> Iterator[Rank]:
    """The usual sources for a movement with its joint."""
    yield from action_ranks(syllabus, ask)


def injury_ranks(syllabus: Syllabus, ask: Ask) -> Iterator[Rank]:
    """Other levels of the nerve, look-alike and sibling nerves, then injuries with a root in common."""
    injuries, kinship = syllabus.injuries.nerves, syllabus.kinship
    nerve = syllabus.catalogue.nerves[ask.value]
    alike = kinship.lookalikes.get(nerve.id, ())
    siblings = {one for parent in nerve.parents for one in kinship.by_nerve_parent[parent]}
    yield "look_alike", tuple(one for one, cut in injuries.items() if cut in alike)
    yield "other_level", tuple(one for one, cut in injuries.items() if cut == nerve.id)
    yield "sibling_nerve", tuple(one for one, cut in injuries.items() if cut in siblings)
    yield (
        "sibling_nerve",
        tuple(
            one
            for one, cut in injuries.items()
            if set(syllabus.catalogue.nerves[cut].roots) & set(nerve.roots)
        ),
    )
    yield (
        "same_region",
        tuple(
            one
            for one, cut in injuries.items()
            if bool(syllabus.catalogue.nerves[cut].roots) == bool(nerve.roots)
        ),
    )
