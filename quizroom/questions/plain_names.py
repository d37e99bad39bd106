"""Names of landmarks without their bone, where anybody would know which bone is meant."""

from collections.abc import Iterable

from quizroom.knowledge.catalogue import Catalogue
from quizroom.knowledge.lexicon import Term
from quizroom.questions.kinship import LIMB_OF

_FEWEST_WORDS = 2
"""One word ("head", "base", "spine") is no name of a landmark."""


def is_clear(catalogue: Catalogue, form: str, term: Term, group: Iterable[Term]) -> bool:
    """Whether a name that several landmarks share means one of them alone in its limb, or in head and trunk.

    Asked for a flexor of the forearm, "medial epicondyle" is that of the humerus, though the femur has one
    too; "styloid process" may be that of radius or ulna. What is typed should be taken where it is
    unambiguous (the trade's default for a class review).
    """
    if term.kind != "landmark" or len(form.split()) < _FEWEST_WORDS:
        return False
    here = _areas(catalogue, term.concept)
    others = (one.concept for one in group if one.concept != term.concept)
    return all(here.isdisjoint(_areas(catalogue, other)) for other in others)


def _areas(catalogue: Catalogue, site: str) -> frozenset[str]:
    landmark = catalogue.landmarks.get(site)
    bones = landmark.bones if landmark else ()
    return frozenset(LIMB_OF.get(catalogue.bones[bone].region, "head and trunk") for bone in bones)
