"""Asks about the bone on which a look-alike landmark lies, and their reasons."""

from collections.abc import Iterator

from quizroom.knowledge.model import Landmark
from quizroom.questions.ask import Ask
from quizroom.questions.grammar import capitalised, definite
from quizroom.questions.model import Reason
from quizroom.questions.syllabus import Syllabus
from quizroom.questions.waiting import BONE_OF_LANDMARK
from quizroom.questions.words import concept_text

_NAMED_KINDS = frozenset(
    (
        *("process", "tubercle", "tuberosity", "epicondyle", "fossa", "groove", "ridge", "crest", "notch"),
        *("angle", "line", "protuberance", "condyle", "trochlea"),
    )
)
_HINT_LETTERS = 4


def place_asks(syllabus: Syllabus) -> Iterator[Ask]:
    """One ask for each look-alike landmark with a name of its own, to which a muscle on the list attaches.

    Only where a look-alike lies on another bone: else nothing is told apart.
    """
    for site in syllabus.kinship.lookalikes:
        landmark = syllabus.catalogue.landmarks.get(site)
        muscle = _attached_muscle(syllabus, site)
        if landmark is None or not muscle or not _is_fit(syllabus, landmark):
            continue
        barred = frozenset(_bones_with(syllabus, landmark.name))
        leads = tuple(bone for bone in _bones_of_lookalikes(syllabus, site) if bone not in barred)
        if not leads:
            continue
        yield Ask(
            family="look_alike",
            direction=BONE_OF_LANDMARK,
            subject=site,
            relation="attachment",
            kind="bone",
            key=landmark.bones,
            barred=barred,
            facts=(f"{site}/bone/-/{landmark.bones[0]}",),
            muscles=(muscle,),
            value=site,
            stem=f"On which of these bones is the {landmark.name}?",
            leads=leads,
        )


def reason_of_bone(syllabus: Syllabus, site: str, bone: str) -> Reason:
    """Whether a landmark lies on the bone, or which look-alike of it does."""
    known = syllabus.catalogue.landmarks
    name, place = known[site].name, definite(concept_text(syllabus.words, "bone", bone))
    tell, sources = _tell(syllabus, site)
    if bone in known[site].bones:
        fact = f"{site}/bone/-/{bone}"
        return Reason(text=f"The {name} is a landmark of {place}. {tell}", facts=(fact,), sources=sources)
    alike = [one for one in syllabus.kinship.lookalikes.get(site, ()) if bone in known[one].bones]
    if alike:
        text = f"{capitalised(place)} has the {known[alike[0]].name}; the {name} is not there."
        return Reason(text=text, sources=sources)
    return Reason(text=f"{capitalised(place)} has no {name}.", sources=sources)


def _attached_muscle(syllabus: Syllabus, site: str) -> str:
    claims = syllabus.tables["attachment"].by_value.get(site, ())
    usual = {claim.muscle for claim in claims if claim.usual}
    return next((muscle for muscle in syllabus.muscles if muscle in usual), "")


def _is_fit(syllabus: Syllabus, landmark: Landmark) -> bool:
    """Whether its name is its own, and does not tell the bone."""
    if landmark.kind not in _NAMED_KINDS or len(landmark.bones) != 1 or landmark.tissue != "bone":
        return False
    bone = syllabus.catalogue.bones[landmark.bones[0]]
    hint = bone.name[:_HINT_LETTERS].lower()
    return not bone.plural and hint not in landmark.name and _bones_with(syllabus, landmark.name) == {bone.id}


def _bones_of_lookalikes(syllabus: Syllabus, site: str) -> Iterator[str]:
    for other in syllabus.kinship.lookalikes[site]:
        landmark = syllabus.catalogue.landmarks[other]
        if landmark.tissue == "bone" and not syllabus.catalogue.bones[landmark.bones[0]].plural:
            yield landmark.bones[0]


def _bones_with(syllabus: Syllabus, name: str) -> set[str]:
    """Bones that have a landmark of this name, by any of its words, with or without its bone.

    Of the femur many books say "lateral supracondylar ridge" for its line: it is no wrong bone for the ridge.
    """
    return {
        bone
        for landmark in syllabus.catalogue.landmarks.values()
        for word in (landmark.name, *landmark.synonyms)
        if word == name or word.startswith(f"{name} of the ")
        for bone in landmark.bones
    }


def _tell(syllabus: Syllabus, site: str) -> tuple[str, tuple[str, ...]]:
    """How to tell the landmark from its look-alikes."""
    sets = (one for one in syllabus.catalogue.lookalikes.values() if site in one.members)
    return next((one.tell, one.sources) for one in sets)
