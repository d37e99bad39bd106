"""Muscles that are mixed up with one another, whatever is asked of them."""

from collections.abc import Iterable, Iterator
from functools import lru_cache

from quizroom.knowledge.model import Muscle
from quizroom.questions.claim import Relation
from quizroom.questions.opponents import opponents_of
from quizroom.questions.ranks import Rank
from quizroom.questions.syllabus import Syllabus, usual_values
from quizroom.questions.words import ENDS


@lru_cache(maxsize=2048)
def kindred_ranks(syllabus: Syllabus, muscle: str) -> tuple[Rank, ...]:
    """What is mixed up with a muscle, the likeliest error first; by nerve only in its region and the next.

    What shares but a bone with it and lies further away comes last: psoas major and trapezius have a vertebra
    in common, and hardly anybody takes one for the other.
    """
    kinship, known = syllabus.kinship, syllabus.catalogue.muscles[muscle]
    siblings = kinship.siblings_of_nerves(known)
    near = frozenset(kinship.around(known.region))
    served = _once(one for nerve in siblings for one in holders(syllabus, "nerve", nerve))
    beside = _once(_beside(syllabus, known))
    return (
        ("look_alike", kinship.lookalikes.get(muscle, ())),
        ("same_compartment", kinship.by_compartment[known.compartment]),
        ("sibling_nerve", tuple(one for one in served if one in near)),
        ("neighbouring_landmark", tuple(one for one in beside if one in near)),
        ("antagonist", _once(opponents_of(syllabus, muscle))),
        ("neighbouring_landmark", tuple(one for one in beside if one not in near)),
    )


@lru_cache(maxsize=4096)
def kindred_values(syllabus: Syllabus, relation: Relation, muscle: str) -> tuple[Rank, ...]:
    """What the muscles that are mixed up with one have of a kind, by the same sources."""
    return tuple(
        (source, usual_values(syllabus, relation, others))
        for source, others in kindred_ranks(syllabus, muscle)
    )


def holders(syllabus: Syllabus, relation: Relation, value: str) -> Iterator[str]:
    """The muscles to which the standard account gives a value."""
    claims = syllabus.tables[relation].by_value.get(value, ())
    yield from (claim.muscle for claim in claims if claim.usual)


def _once(muscles: Iterable[str]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(muscles))


def _beside(syllabus: Syllabus, muscle: Muscle) -> Iterator[str]:
    """Muscles with the same end at the same place, then on the same bone."""
    landmarks = syllabus.catalogue.landmarks
    for end in ENDS:
        claims = syllabus.tables[end].by_muscle.get(muscle.id, ())
        sites = [claim.value for claim in claims if claim.usual]
        for site in sites:
            yield from holders(syllabus, end, site)
        bones = dict.fromkeys(bone for site in sites for bone in landmarks[site].bones)
        for other in (other for bone in bones for other in syllabus.kinship.by_bone[bone]):
            yield from holders(syllabus, end, other)
