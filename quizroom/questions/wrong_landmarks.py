"""Wrong landmarks: look-alikes, neighbours on the bone, homologous bones, sites of neighbouring muscles."""

from collections.abc import Iterable, Iterator

from quizroom.knowledge.model import Landmark
from quizroom.questions.ask import Ask
from quizroom.questions.kinship import LIMB_OF
from quizroom.questions.ranks import Rank
from quizroom.questions.syllabus import Syllabus

_VAGUE_KINDS = frozenset(("shaft", "articular surface", "capsule", "septum", "skin", "part", "end"))
"""Places that are no typical error, or too wide to be clearly wrong."""


def landmark_ranks(syllabus: Syllabus, ask: Ask) -> Iterator[Rank]:
    """The ranked sources for a landmark. Soft tissue is offered only beside soft tissue."""
    kinship = syllabus.kinship
    key = syllabus.catalogue.landmarks[ask.key[0]]
    muscle = syllabus.catalogue.muscles[ask.muscles[0]]
    yield "look_alike", kinship.lookalikes.get(key.id, ())
    yield "neighbouring_landmark", _fit(syllabus, key, _on_same_bone(syllabus, key))
    yield "homologous_bone", _fit(syllabus, key, (*key.homologues, *_namesakes(syllabus, key)))
    mates = kinship.by_compartment.get(muscle.compartment, ())
    yield "same_compartment", _fit(syllabus, key, _sites(syllabus, ask, mates))
    yield "same_region", _fit(syllabus, key, _sites(syllabus, ask, kinship.by_region.get(muscle.region, ())))


def _fit(syllabus: Syllabus, key: Landmark, sites: Iterable[str]) -> tuple[str, ...]:
    landmarks = (syllabus.catalogue.landmarks[site] for site in sites)
    return tuple(
        one.id
        for one in landmarks
        if one.kind not in _VAGUE_KINDS and (one.tissue == "bone" or key.tissue == "soft")
    )


def _on_same_bone(syllabus: Syllabus, key: Landmark) -> Iterator[str]:
    """Landmarks of the bone where muscles attach, those at the same end first."""
    here = dict.fromkeys(site for bone in key.bones for site in syllabus.kinship.by_bone[bone])
    attached = [site for site in here if site in syllabus.tables["attachment"].by_value]
    yield from (site for site in attached if syllabus.catalogue.landmarks[site].tissue == key.tissue)


def _namesakes(syllabus: Syllabus, key: Landmark) -> tuple[str, ...]:
    """Landmarks of the same name, of limbs beside those of limbs: no base of a jaw beside one of a toe."""
    alike = syllabus.kinship.by_landmark_name.get(key.name, ())
    return tuple(one for one in alike if _on_limb(syllabus, one) == _on_limb(syllabus, key.id))


def _on_limb(syllabus: Syllabus, site: str) -> bool:
    bones = syllabus.catalogue.landmarks[site].bones
    return any(syllabus.catalogue.bones[bone].region in LIMB_OF for bone in bones)


def _sites(syllabus: Syllabus, ask: Ask, muscles: Iterable[str]) -> Iterator[str]:
    """Where other muscles have the same end."""
    claims = syllabus.tables[ask.relation].by_muscle
    for muscle in muscles:
        yield from (claim.value for claim in claims.get(muscle, ()) if claim.usual)
