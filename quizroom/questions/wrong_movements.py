"""Wrong movements, actions, joints and bones."""

from collections.abc import Iterable, Iterator
from functools import lru_cache

from quizroom.knowledge.model import Bone
from quizroom.questions.ask import Ask
from quizroom.questions.kindred import kindred_values
from quizroom.questions.opponents import opposite_of
from quizroom.questions.ranks import Rank
from quizroom.questions.syllabus import Syllabus
from quizroom.questions.words import is_true_joint

_NEAREST = 6
_NEXT = 3
"""Joints that count as neighbours of one, whether or not they share a bone with it."""
_TRUNK = ("head", "trunk")


def movement_ranks(syllabus: Syllabus, ask: Ask) -> Iterator[Rank]:
    """The ranked sources for a movement at a given joint: its opposite, then the joint's others."""
    joint, _, movement = ask.key[0].partition(".")
    yield "antagonist", (opposite_of(syllabus, ask.key[0]),)
    yield "look_alike", lookalikes_at(syllabus, joint, movement)
    yield "antagonist", tuple(_opposites(syllabus, ask, joint))
    for source, actions in _of_others(syllabus, ask):
        yield source, tuple(one for one in actions if one.partition(".")[0] == joint)
    done = syllabus.tables["action"].by_value
    yield "same_joint", tuple(one for one in _movements_at(syllabus, joint) if one in done)


def lookalikes_at(syllabus: Syllabus, joint: str, movement: str) -> tuple[str, ...]:
    """The movements that are mixed up with one, as far as the joint has them: no scapula is "fixed" there."""
    possible = syllabus.catalogue.joints[joint].movements
    return tuple(f"{joint}.{one}" for one in syllabus.kinship.lookalikes.get(movement, ()) if one in possible)


def action_ranks(syllabus: Syllabus, ask: Ask) -> Iterator[Rank]:
    """The ranked sources for a movement with its joint, among those that some muscle produces."""
    joint, _, movement = ask.key[0].partition(".")
    nearby = joints_nearby(syllabus, joint)
    done = done_actions(syllabus)
    opposite = opposite_of(syllabus, ask.key[0])
    yield "antagonist", tuple(one for one in (opposite,) if one in done)
    yield (
        "antagonist",
        tuple(one for near in nearby for one in _opposites(syllabus, ask, near) if one in done),
    )
    yield from _of_others(syllabus, ask)
    motions = (movement, opposite.partition(".")[2])
    elsewhere = (f"{near}.{one}" for near in nearby for one in motions)
    yield "other_joint", tuple(one for one in elsewhere if one in done)
    for near in nearby:
        yield "same_region", tuple(one for one in _movements_at(syllabus, near) if one in done)


@lru_cache(maxsize=8)
def done_actions(syllabus: Syllabus) -> frozenset[str]:
    """What some muscle does by the standard account."""
    table = syllabus.tables["action"].by_value
    return frozenset(action for action, claims in table.items() if any(claim.usual for claim in claims))


def joint_ranks(syllabus: Syllabus, ask: Ask) -> Iterator[Rank]:
    """The ranked sources for a joint: those of muscles mixed up with this one, then those nearest to it
    along the limb at which muscles act, then its like in the other limb.

    Of look-alikes as of others those of the limb and its like: pronator quadratus tempts nobody to think of
    the lumbar joints that quadratus lumborum crosses.
    """
    homologous = syllabus.kinship.homologous_joints(ask.key[0])
    near = {*syllabus.joints_nearby(ask.key[0]), *homologous}
    for source, joints in kindred_values(syllabus, "crossing", ask.muscles[0]):
        yield source, _true_joints(syllabus, (one for one in joints if one in near))
    nearby = joints_nearby(syllabus, ask.key[0])
    beside = (*nearby[: _NEXT + 1], *_on_same_bone(syllabus, ask.key[0], nearby))
    yield "neighbouring_landmark", _true_joints(syllabus, beside)
    yield "other_joint", _true_joints(syllabus, nearby)
    yield "serial_homologue", homologous


def bone_ranks(syllabus: Syllabus, ask: Ask) -> Iterator[Rank]:
    """The bones nearest to that of a landmark, in its limb or in the trunk; look-alikes lead already."""
    bones = syllabus.catalogue.bones
    here = bones[ask.key[0]]
    kin = (
        one
        for one in bones.values()
        if not one.plural and _in_trunk(one) == _in_trunk(here) and _is_bony(syllabus, one)
    )
    nearest = sorted(kin, key=lambda bone: (abs(bone.order - here.order), bone.id))
    yield "homologous_bone", tuple(bone.id for bone in nearest[:_NEAREST])


def joints_nearby(syllabus: Syllabus, joint: str) -> tuple[str, ...]:
    """Joints of the same limb (or of the trunk) at which muscles act, the nearest first, itself included."""
    return syllabus.joints_nearby(joint)[:_NEAREST]


def _on_same_bone(syllabus: Syllabus, joint: str, others: Iterable[str]) -> Iterator[str]:
    """Those at the other end of a bone of a joint, or beside it."""
    bones = set(syllabus.catalogue.joints[joint].bones)
    yield from (one for one in others if not bones.isdisjoint(syllabus.catalogue.joints[one].bones))


def _true_joints(syllabus: Syllabus, joints: Iterable[str]) -> tuple[str, ...]:
    return tuple(one for one in joints if is_true_joint(syllabus.catalogue.joints[one]))


def _of_others(syllabus: Syllabus, ask: Ask) -> Iterator[Rank]:
    """What muscles do that are mixed up with this one."""
    yield from kindred_values(syllabus, "action", ask.muscles[0])


def _opposites(syllabus: Syllabus, ask: Ask, joint: str) -> Iterator[str]:
    """At a joint, the opposites of what the muscle also does."""
    if ask.unit is None:
        return
    for claim in syllabus.tables["action"].by_muscle.get(ask.unit[0], ()):
        if claim.usual and claim.value.partition(".")[0] == joint:
            yield opposite_of(syllabus, claim.value)


def _movements_at(syllabus: Syllabus, joint: str) -> Iterable[str]:
    return (f"{joint}.{movement}" for movement in syllabus.catalogue.joints[joint].movements)


def _is_bony(syllabus: Syllabus, bone: Bone) -> bool:
    """Whether it has a landmark of bone: attachments also lie on eyelids and the abdominal wall."""
    landmarks = syllabus.catalogue.landmarks
    return any(landmarks[site].tissue == "bone" for site in syllabus.kinship.by_bone.get(bone.id, ()))


def _in_trunk(bone: Bone) -> bool:
    return bone.region in _TRUNK
