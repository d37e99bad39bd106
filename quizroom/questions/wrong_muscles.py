"""Wrong muscles: look-alikes, mates of the compartment, neighbours on the bone, antagonists, the region."""

from collections.abc import Iterable, Iterator
from functools import lru_cache

from quizroom.questions.ask import Ask
from quizroom.questions.claim import Relation
from quizroom.questions.kindred import holders, kindred_ranks
from quizroom.questions.opponents import opposite_of
from quizroom.questions.overlap import segments_beside
from quizroom.questions.ranks import Rank
from quizroom.questions.syllabus import Syllabus

_NEXT_JOINTS = 5


def muscle_ranks(syllabus: Syllabus, ask: Ask) -> Iterator[Rank]:
    """The ranked sources for a muscle, or for the members of a set.

    A muscle of which nothing of the kind is recorded is left out: there would be nothing to tell of it.
    """
    known = _known(syllabus, "action" if ask.relation == "prime" else ask.relation)
    for source, muscles in _all_ranks(syllabus, ask):
        yield source, tuple(one for one in muscles if one in known)


@lru_cache(maxsize=64)
def _known(syllabus: Syllabus, relation: Relation) -> frozenset[str]:
    """The muscles of which the standard account says something of a kind."""
    by_muscle = syllabus.tables[relation].by_muscle.items()
    return frozenset(muscle for muscle, claims in by_muscle if any(claim.usual for claim in claims))


def head_ranks(syllabus: Syllabus, ask: Ask) -> Iterator[Rank]:
    """The ranked sources for a head: the other heads of its muscle, then those of muscles near it."""
    muscle, _, _ = ask.key[0].partition("/")
    yield "same_compartment", _heads(syllabus, muscle)
    for source, others in kindred_ranks(syllabus, muscle):
        yield source, _all(_heads(syllabus, other) for other in others)
    region = syllabus.catalogue.muscles[muscle].region
    yield "same_region", _all(_heads(syllabus, other) for other in syllabus.kinship.around(region))


def _all_ranks(syllabus: Syllabus, ask: Ask) -> Iterator[Rank]:
    kinship = syllabus.kinship
    muscles = [syllabus.catalogue.muscles[muscle] for muscle in ask.key]
    if ask.relation in ("action", "prime"):
        yield "antagonist", tuple(holders(syllabus, "action", opposite_of(syllabus, ask.value)))
    if ask.relation in ("origin", "insertion", "attachment"):
        yield "look_alike", _all(kinship.lookalikes.get(muscle.id, ()) for muscle in muscles)
        yield "neighbouring_landmark", tuple(_neighbours(syllabus, ask))
    if ask.relation == "nerve":
        yield "look_alike", _all(kinship.lookalikes.get(muscle.id, ()) for muscle in muscles)
        yield "sibling_nerve", tuple(_served_by_siblings(syllabus, ask.value))
    for muscle in muscles:
        yield from kindred_ranks(syllabus, muscle.id)
    near = _all(kinship.around(muscle.region) for muscle in muscles)
    if ask.relation in ("action", "prime"):
        yield "other_joint", _kept(_same_movement_elsewhere(syllabus, ask.value), near)
        yield "same_joint", _kept(_movers_of_joint(syllabus, ask.value), near)
    if ask.relation == "crossing":
        for joint in _next_joints(syllabus, ask.value):
            yield "other_joint", _kept(holders(syllabus, "crossing", joint), near)
    if ask.relation == "root":
        for segment in sorted(segments_beside(ask.value)):
            further = segments_beside(segment) - segments_beside(ask.value)
            yield "neighbouring_segment", _all(tuple(holders(syllabus, "root", one)) for one in further)
    yield "serial_homologue", _all(kinship.homologous_muscles(muscle.id) for muscle in muscles)
    yield "same_region", near


def _all(groups: Iterable[tuple[str, ...]]) -> tuple[str, ...]:
    return tuple(member for group in groups for member in group)


def _kept(muscles: Iterable[str], near: tuple[str, ...]) -> tuple[str, ...]:
    """Those that lie near: nobody looks for a muscle of the knee in the throat."""
    wanted = set(near)
    return tuple(one for one in muscles if one in wanted)


def _heads(syllabus: Syllabus, muscle: str) -> tuple[str, ...]:
    if muscle not in syllabus.course.separate_parts or muscle not in syllabus.on_list:
        return ()
    return tuple(f"{muscle}/{part.id}" for part in syllabus.catalogue.muscles[muscle].parts)


def _same_movement_elsewhere(syllabus: Syllabus, action: str) -> Iterator[str]:
    movement = action.partition(".")[2]
    for joint in _next_joints(syllabus, action.partition(".")[0]):
        yield from holders(syllabus, "action", f"{joint}.{movement}")


def _next_joints(syllabus: Syllabus, joint: str) -> tuple[str, ...]:
    return syllabus.joints_nearby(joint)[1 : _NEXT_JOINTS + 1]


def _movers_of_joint(syllabus: Syllabus, action: str) -> Iterator[str]:
    joint = action.partition(".")[0]
    for movement in syllabus.catalogue.joints[joint].movements:
        yield from holders(syllabus, "action", f"{joint}.{movement}")


def _neighbours(syllabus: Syllabus, ask: Ask) -> Iterator[str]:
    """Muscles with the same end on look-alikes of the site, or on other landmarks of its bone."""
    site = syllabus.catalogue.landmarks[ask.value]
    on_bone = (other for bone in site.bones for other in syllabus.kinship.by_bone[bone])
    for other in (*syllabus.kinship.lookalikes.get(site.id, ()), *on_bone):
        yield from holders(syllabus, ask.relation, other)


def _served_by_siblings(syllabus: Syllabus, nerve: str) -> Iterator[str]:
    kinship = syllabus.kinship
    parents = syllabus.catalogue.nerves[nerve].parents
    siblings = (one for parent in parents for one in kinship.by_nerve_parent[parent])
    for other in (*kinship.lookalikes.get(nerve, ()), *siblings):
        yield from holders(syllabus, "nerve", other)
