"""Wrong muscles: look-alikes, mates of the compartment, antagonists, neighbours, the region."""

from collections.abc import Iterable, Iterator

from quizroom.questions.ask import Ask
from quizroom.questions.claims import Relation
from quizroom.questions.ranks import Rank
from quizroom.questions.syllabus import Syllabus


def muscle_ranks(syllabus: Syllabus, ask: Ask) -> Iterator[Rank]:
    """The ranked sources for a muscle, or for the members of a set."""
    kinship = syllabus.kinship
    muscles = [syllabus.catalogue.muscles[muscle] for muscle in ask.key]
    if ask.relation in ("action", "prime"):
        yield "antagonist", tuple(_antagonists(syllabus, ask.value))
    yield "look_alike", _all(kinship.lookalikes.get(muscle.id, ()) for muscle in muscles)
    yield "same_compartment", _all(kinship.by_compartment.get(one.compartment, ()) for one in muscles)
    if ask.relation in ("origin", "insertion", "attachment"):
        yield "neighbouring_landmark", tuple(_neighbours(syllabus, ask))
    if ask.relation == "nerve":
        yield "sibling_nerve", tuple(_served_by_siblings(syllabus, ask.value))
    if ask.relation in ("action", "prime"):
        yield "other_joint", tuple(_same_movement_elsewhere(syllabus, ask.value))
        yield "same_region", tuple(_movers_of_joint(syllabus, ask.value))
    yield "same_region", _all(kinship.by_region.get(muscle.region, ()) for muscle in muscles)


def head_ranks(syllabus: Syllabus, ask: Ask) -> Iterator[Rank]:
    """The ranked sources for a head: the other heads of its muscle, then those of others on the list."""
    muscle, _, _ = ask.key[0].partition("/")
    yield "same_compartment", _heads(syllabus, muscle)
    others = syllabus.kinship.lookalikes.get(muscle, ())
    yield "look_alike", _all(_heads(syllabus, other) for other in others)
    yield "same_region", _all(_heads(syllabus, other) for other in syllabus.muscles)


def _all(groups: Iterable[tuple[str, ...]]) -> tuple[str, ...]:
    return tuple(member for group in groups for member in group)


def _heads(syllabus: Syllabus, muscle: str) -> tuple[str, ...]:
    if muscle not in syllabus.course.separate_parts or muscle not in syllabus.catalogue.muscles:
        return ()
    return tuple(f"{muscle}/{part.id}" for part in syllabus.catalogue.muscles[muscle].parts)


def _holders(syllabus: Syllabus, relation: Relation, value: str) -> Iterator[str]:
    claims = syllabus.tables[relation].by_value.get(value, ())
    yield from (claim.muscle for claim in claims if claim.usual)


def _antagonists(syllabus: Syllabus, action: str) -> Iterator[str]:
    joint, _, movement = action.partition(".")
    opposite = syllabus.catalogue.movements[movement].antagonist
    yield from _holders(syllabus, "action", f"{joint}.{opposite}")


def _same_movement_elsewhere(syllabus: Syllabus, action: str) -> Iterator[str]:
    movement = action.partition(".")[2]
    order = {joint.id: joint.order for joint in syllabus.catalogue.joints.values()}
    here = order[action.partition(".")[0]]
    nearest = sorted(order, key=lambda joint: (abs(order[joint] - here), joint))
    for joint in nearest[1:6]:
        yield from _holders(syllabus, "action", f"{joint}.{movement}")


def _movers_of_joint(syllabus: Syllabus, action: str) -> Iterator[str]:
    joint = action.partition(".")[0]
    for movement in syllabus.catalogue.joints[joint].movements:
        yield from _holders(syllabus, "action", f"{joint}.{movement}")


def _neighbours(syllabus: Syllabus, ask: Ask) -> Iterator[str]:
    """Muscles with the same end on look-alikes of the site, or on other landmarks of its bone."""
    site = syllabus.catalogue.landmarks[ask.value]
    on_bone = (other for bone in site.bones for other in syllabus.kinship.by_bone[bone])
    for other in (*syllabus.kinship.lookalikes.get(site.id, ()), *on_bone):
        yield from _holders(syllabus, ask.relation, other)


def _served_by_siblings(syllabus: Syllabus, nerve: str) -> Iterator[str]:
    kinship = syllabus.kinship
    parents = syllabus.catalogue.nerves[nerve].parents
    siblings = (one for parent in parents for one in kinship.by_nerve_parent[parent])
    for other in (*kinship.lookalikes.get(nerve, ()), *siblings):
        yield from _holders(syllabus, "nerve", other)
