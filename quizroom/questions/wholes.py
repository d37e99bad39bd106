"""What a thing is a part of, for answers that name the whole: biceps brachii for its long head."""

from quizroom.knowledge.anatomy import site_wholes
from quizroom.knowledge.catalogue import Catalogue


def wholes_of(catalogue: Catalogue, concept: str) -> tuple[str, ...]:
    """The muscle of a head, the larger places and bones of a landmark, the stem of a nerve or artery."""
    muscle, _, part = concept.partition("/")
    if part:
        return (muscle,)
    if concept in catalogue.landmarks:
        place = catalogue.landmarks[concept]
        return (*sorted(site_wholes(catalogue, concept)), *(place.bones if place.tissue == "bone" else ()))
    if concept in catalogue.nerves:
        stems = (catalogue.nerves[one] for one in catalogue.nerves[concept].parents)
        return tuple(one.id for one in stems if one.kind in ("nerve", "branch"))
    if concept in catalogue.arteries:
        parent = catalogue.arteries[concept].parent
        return (parent,) if parent else ()
    return ()
