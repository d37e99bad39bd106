"""Finding muscles by any of their words: names, landmarks, nerves, arteries, movements."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from quizroom.knowledge.catalogue import Catalogue
from quizroom.knowledge.model import Action, Attachment, Muscle
from quizroom.knowledge.terms import normalise


@dataclass(frozen=True, slots=True, kw_only=True)
class Hit:
    """A muscle that was found; `because` says by which words, empty if by its own name."""

    muscle: Muscle
    because: str
    rank: int


@dataclass(frozen=True, slots=True)
class _Entry:
    """Words under which a muscle can be found; lower ranks come first."""

    rank: int
    because: str
    words: tuple[str, ...]


def search(catalogue: Catalogue, text: str, *, region: str = "", compartment: str = "") -> tuple[Hit, ...]:
    """Muscles with an entry that holds every word of `text` as the beginning of a word.

    An empty text finds all. Found by name come before found by synonym, then by what they attach
    to, do, and are supplied by; within that by region and name.
    """
    wanted = normalise(text).split()
    hits = (_hit(catalogue, muscle, wanted) for muscle in _filtered(catalogue, region, compartment))
    return tuple(
        sorted(
            (hit for hit in hits if hit is not None),
            key=lambda hit: (
                hit.rank if wanted else 0,
                catalogue.regions[hit.muscle.region].order,
                hit.muscle.name,
            ),
        )
    )


def _filtered(catalogue: Catalogue, region: str, compartment: str) -> Iterator[Muscle]:
    for muscle in catalogue.muscles.values():
        if region in ("", muscle.region) and compartment in ("", muscle.compartment):
            yield muscle


def _hit(catalogue: Catalogue, muscle: Muscle, wanted: list[str]) -> Hit | None:
    found = (entry for entry in _entries(catalogue, muscle) if _holds(entry.words, wanted))
    best = min(found, key=lambda entry: entry.rank, default=None)
    return None if best is None else Hit(muscle=muscle, because=best.because, rank=best.rank)


def _holds(terms: Iterable[str], wanted: list[str]) -> bool:
    return any(_begins(normalise(term).split(), wanted) for term in terms)


def _begins(words: list[str], wanted: list[str]) -> bool:
    return all(any(word.startswith(start) for word in words) for start in wanted)


def _entries(catalogue: Catalogue, muscle: Muscle) -> Iterator[_Entry]:
    yield _Entry(0, "", (muscle.name,))
    yield _Entry(1, muscle.latin, (muscle.latin,))
    for name in muscle.names:
        yield _Entry(1, f"{name.kind}: {name.term}", (name.term,))
    for part in muscle.parts:
        yield _Entry(2, part.name, (f"{part.name} {muscle.name}", part.latin))
    for origin in muscle.origins:
        yield _site_entry(catalogue, "origin", origin)
    for insertion in muscle.insertions:
        yield _site_entry(catalogue, "insertion", insertion)
    for supply in muscle.nerves:
        nerve = catalogue.nerves[supply.nerve]
        yield _Entry(4, f"nerve: {nerve.name}", (nerve.name, *nerve.synonyms, supply.branch))
    for action in muscle.actions:
        yield _action_entry(catalogue, action)
    for blood in muscle.arteries:
        artery = catalogue.arteries[blood.artery]
        yield _Entry(6, f"artery: {artery.name}", (artery.name, *artery.synonyms))


def _site_entry(catalogue: Catalogue, end: str, attachment: Attachment) -> _Entry:
    landmark = catalogue.landmarks[attachment.site]
    bones = " ".join(catalogue.bones[bone].name for bone in landmark.bones)
    names = (f"{name} {bones}" for name in (landmark.name, *landmark.synonyms))
    return _Entry(3, f"{end}: {landmark.label}", (landmark.label, *names))


def _action_entry(catalogue: Catalogue, action: Action) -> _Entry:
    joint, movement = catalogue.joints[action.joint], catalogue.movements[action.movement]
    doing = f"{movement.name} {movement.verb}"
    return _Entry(
        5,
        f"{movement.name} at the {joint.name}",
        tuple(f"{doing} {name}" for name in (joint.name, *joint.synonyms)),
    )
