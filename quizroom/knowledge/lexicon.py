"""Every word of the catalogue with the concept it denotes, for typed answers.

A concept is an id of a muscle, bone, landmark, joint, movement, nerve or artery, or
`<muscle>/<part>` for a head. These ids are unique over all tables (a content rule).
"""

from collections import Counter
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from types import MappingProxyType
from typing import Literal

from quizroom.knowledge.catalogue import Catalogue
from quizroom.knowledge.model import Landmark, Muscle, NameKind, TermKind
from quizroom.knowledge.terms import normalise

WordStanding = Literal["preferred", "label"] | NameKind


@dataclass(frozen=True, slots=True, kw_only=True)
class Term:
    """A word or words for a concept. One that is not `exact` is never accepted alone."""

    text: str
    concept: str
    kind: TermKind
    standing: WordStanding
    exact: bool = True


def lexicon(catalogue: Catalogue) -> Mapping[str, tuple[Term, ...]]:
    """All terms by their normalised form; a form may stand for several concepts ("styloid process")."""
    found: dict[str, list[Term]] = {}
    for term in terms_of(catalogue):
        found.setdefault(normalise(term.text), []).append(term)
    return MappingProxyType({form: tuple(terms) for form, terms in found.items()})


def terms_of(catalogue: Catalogue) -> Iterator[Term]:
    """Every term of every concept, in content order, the preferred one of a concept first."""
    for muscle in catalogue.muscles.values():
        yield from _muscle_terms(muscle)
    for bone in catalogue.bones.values():
        yield from _named(bone.id, "bone", bone.name, bone.synonyms, bone.latin)
    yield from _landmark_terms(catalogue)
    for joint in catalogue.joints.values():
        yield from _named(joint.id, "joint", joint.name, joint.synonyms)
    for movement in catalogue.movements.values():
        yield from _named(movement.id, "movement", movement.name, movement.synonyms)
    for nerve in catalogue.nerves.values():
        yield from _named(nerve.id, "nerve", nerve.name, nerve.synonyms)
    for artery in catalogue.arteries.values():
        yield from _named(artery.id, "artery", artery.name, artery.synonyms)


def part_concept(muscle: str, part: str) -> str:
    """The concept id of a head, or of the whole muscle if the part is empty."""
    return f"{muscle}/{part}" if part else muscle


def _named(
    concept: str, kind: TermKind, name: str, synonyms: tuple[str, ...], latin: str = ""
) -> Iterator[Term]:
    yield Term(text=name, concept=concept, kind=kind, standing="preferred")
    if latin:
        yield Term(text=latin, concept=concept, kind=kind, standing="latin")
    for synonym in synonyms:
        yield Term(text=synonym, concept=concept, kind=kind, standing="synonym")


def _muscle_terms(muscle: Muscle) -> Iterator[Term]:
    yield from _named(muscle.id, "muscle", muscle.name, (), muscle.latin)
    for name in muscle.names:
        yield Term(text=name.term, concept=muscle.id, kind="muscle", standing=name.kind, exact=name.exact)
    for part in muscle.parts:
        concept = part_concept(muscle.id, part.id)
        yield Term(text=f"{part.name} of {muscle.name}", concept=concept, kind="muscle", standing="preferred")
        for synonym in (f"{muscle.name}, {part.name}", *part.synonyms):
            yield Term(text=synonym, concept=concept, kind="muscle", standing="synonym")


def _landmark_terms(catalogue: Catalogue) -> Iterator[Term]:
    """A name or synonym that several landmarks share (styloid process) is not exact, a label is."""
    terms = [term for landmark in catalogue.landmarks.values() for term in _words_of(landmark)]
    shared = Counter(form for form, _ in {(normalise(term.text), term.concept) for term in terms})
    for term in terms:
        unique = shared[normalise(term.text)] == 1
        yield term if unique or term.standing == "label" else replace(term, exact=False)


def _words_of(landmark: Landmark) -> Iterator[Term]:
    yield Term(text=landmark.label, concept=landmark.id, kind="landmark", standing="label")
    yield from _named(landmark.id, "landmark", landmark.name, landmark.synonyms, landmark.latin)
