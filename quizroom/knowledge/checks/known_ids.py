"""Rules: every id that is referred to exists."""

from collections.abc import Iterator, Mapping

from quizroom.knowledge.catalogue import Catalogue
from quizroom.knowledge.checks.flaw import Flaw, at_entry
from quizroom.knowledge.checks.references import unknown_at_fact, unknown_in_entries, unknown_in_muscle
from quizroom.knowledge.facts import Fact
from quizroom.knowledge.model import Action, TermKind


def every_site_is_known(catalogue: Catalogue) -> Iterator[Flaw]:
    """Origins and insertions are landmarks of the landmark files."""
    for fact in _facts(catalogue, "origin", "insertion"):
        yield from unknown_at_fact(catalogue, fact, "site", fact.value, catalogue.landmarks)


def every_nerve_is_known(catalogue: Catalogue) -> Iterator[Flaw]:
    """Nerves of muscles and parents of nerves stand in nerves.toml."""
    for fact in _facts(catalogue, "nerve"):
        yield from unknown_at_fact(catalogue, fact, "nerve", fact.value, catalogue.nerves)
    parents = ((nerve.id, nerve.parents) for nerve in catalogue.nerves.values())
    yield from unknown_in_entries(catalogue, "nerves", "parents", parents, catalogue.nerves)


def every_artery_is_known(catalogue: Catalogue) -> Iterator[Flaw]:
    """Arteries of muscles and regions and parents of arteries stand in arteries.toml."""
    for fact in _facts(catalogue, "artery"):
        yield from unknown_at_fact(catalogue, fact, "artery", fact.value, catalogue.arteries)
    parents = ((artery.id, (artery.parent,)) for artery in catalogue.arteries.values() if artery.parent)
    yield from unknown_in_entries(catalogue, "arteries", "parent", parents, catalogue.arteries)
    trunks = ((region.id, region.arteries) for region in catalogue.regions.values())
    yield from unknown_in_entries(catalogue, "regions", "arteries", trunks, catalogue.arteries)


def every_joint_and_movement_is_known(catalogue: Catalogue) -> Iterator[Flaw]:
    """Joints and movements of actions, and the movements of joints, stand in their files."""
    for fact in _facts(catalogue, "action"):
        if isinstance(fact.row, Action):
            yield from unknown_at_fact(catalogue, fact, "joint", fact.row.joint, catalogue.joints)
            yield from unknown_at_fact(catalogue, fact, "movement", fact.row.movement, catalogue.movements)
    movements = ((joint.id, joint.movements) for joint in catalogue.joints.values())
    yield from unknown_in_entries(catalogue, "joints", "movements", movements, catalogue.movements)


def every_bone_is_known(catalogue: Catalogue) -> Iterator[Flaw]:
    """Bones of landmarks and joints stand in bones.toml."""
    sites = ((landmark.id, landmark.bones) for landmark in catalogue.landmarks.values())
    yield from unknown_in_entries(catalogue, "landmarks", "bones", sites, catalogue.bones)
    joints = catalogue.joints.values()
    yield from unknown_in_entries(
        catalogue, "joints", "bones", ((joint.id, joint.bones) for joint in joints), catalogue.bones
    )
    links = ((joint.id, (bone for link in joint.links for bone in link)) for joint in joints)
    yield from unknown_in_entries(catalogue, "joints", "links", links, catalogue.bones)


def every_related_landmark_is_known(catalogue: Catalogue) -> Iterator[Flaw]:
    """`within` and `homologues` name landmarks."""
    landmarks = catalogue.landmarks
    wholes = ((landmark.id, landmark.within) for landmark in landmarks.values())
    yield from unknown_in_entries(catalogue, "landmarks", "within", wholes, landmarks)
    alike = ((landmark.id, landmark.homologues) for landmark in landmarks.values())
    yield from unknown_in_entries(catalogue, "landmarks", "homologues", alike, landmarks)


def every_region_and_compartment_is_known(catalogue: Catalogue) -> Iterator[Flaw]:
    """The region and compartment of a muscle stand in their files, as does a compartment's region."""
    for muscle in catalogue.muscles.values():
        yield from unknown_in_muscle(catalogue, muscle, "region", muscle.region, catalogue.regions)
        yield from unknown_in_muscle(
            catalogue, muscle, "compartment", muscle.compartment, catalogue.compartments
        )
    regions = ((one.id, (one.region,)) for one in catalogue.compartments.values())
    yield from unknown_in_entries(catalogue, "compartments", "region", regions, catalogue.regions)


def every_part_is_known(catalogue: Catalogue) -> Iterator[Flaw]:
    """A row that names a part names one of the muscle's `parts`."""
    for fact in catalogue.index.facts.values():
        parts = {part.id: part for part in catalogue.muscles[fact.muscle].parts}
        if fact.part:
            yield from unknown_at_fact(catalogue, fact, "part", fact.part, parts)


def lookalikes_resolve(catalogue: Catalogue) -> Iterator[Flaw]:
    """A look-alike set has at least two members, all known things of its kind."""
    tables: Mapping[TermKind, Mapping[str, object]] = {
        "muscle": catalogue.muscles,
        "landmark": catalogue.landmarks,
        "bone": catalogue.bones,
        "nerve": catalogue.nerves,
        "artery": catalogue.arteries,
        "movement": catalogue.movements,
        "joint": catalogue.joints,
    }
    for one in catalogue.lookalikes.values():
        members = [(one.id, one.members)]
        yield from unknown_in_entries(catalogue, "lookalikes", "members", members, tables[one.kind])
        if len(set(one.members)) < 2:
            remedy = "name at least two members; words outside the content go into `also`"
            yield at_entry(catalogue, "lookalikes", one.id, "nothing to mix up", remedy, field="members")


def _facts(catalogue: Catalogue, *kinds: str) -> Iterator[Fact]:
    return (fact for fact in catalogue.index.facts.values() if fact.kind in kinds)
