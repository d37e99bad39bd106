"""Wrong movements, actions, joints and bones."""

from collections.abc import Iterator

from quizroom.knowledge.model import Bone
from quizroom.questions.ask import Ask
from quizroom.questions.ranks import Rank
from quizroom.questions.syllabus import Syllabus
from quizroom.questions.words import is_true_joint

_NEAREST = 6
_TRUNK = ("head", "trunk")


def movement_ranks(syllabus: Syllabus, ask: Ask) -> Iterator[Rank]:
    """The ranked sources for a movement at a given joint: its opposite, then the joint's others."""
    joint, _, movement = ask.key[0].partition(".")
    yield "antagonist", (f"{joint}.{syllabus.catalogue.movements[movement].antagonist}",)
    yield "look_alike", tuple(f"{joint}.{one}" for one in syllabus.kinship.lookalikes.get(movement, ()))
    yield "antagonist", tuple(_opposites(syllabus, ask, joint))
    done = syllabus.tables["action"].by_value
    yield "same_region", tuple(one for one in _movements_at(syllabus, joint) if one in done)


def action_ranks(syllabus: Syllabus, ask: Ask) -> Iterator[Rank]:
    """The ranked sources for a movement with its joint, among those that some muscle produces."""
    joint, _, movement = ask.key[0].partition(".")
    nearby = joints_nearby(syllabus, joint)
    table = syllabus.tables["action"].by_value
    done = {action for action, claims in table.items() if any(claim.usual for claim in claims)}
    opposites = (one for near in nearby for one in _opposites(syllabus, ask, near))
    opposite = syllabus.catalogue.movements[movement].antagonist
    yield "antagonist", tuple(one for one in (f"{joint}.{opposite}",) if one in done)
    yield "antagonist", tuple(one for one in opposites if one in done)
    elsewhere = (f"{near}.{one}" for near in nearby for one in (movement, opposite))
    yield "other_joint", tuple(one for one in elsewhere if one in done)
    for near in nearby:
        yield "same_region", tuple(one for one in _movements_at(syllabus, near) if one in done)


def joint_ranks(syllabus: Syllabus, ask: Ask) -> Iterator[Rank]:
    """The ranked sources for a joint: those nearest to it along the limb at which muscles act."""
    joints = syllabus.catalogue.joints
    nearby = joints_nearby(syllabus, ask.key[0])
    yield "other_joint", tuple(one for one in nearby if is_true_joint(joints[one]))


def bone_ranks(syllabus: Syllabus, ask: Ask) -> Iterator[Rank]:
    """The bones nearest to that of a landmark, in its limb or in the trunk; look-alikes lead already."""
    bones = syllabus.catalogue.bones
    here = bones[ask.key[0]]
    kin = (one for one in bones.values() if not one.plural and _in_trunk(one) == _in_trunk(here))
    nearest = sorted(kin, key=lambda bone: (abs(bone.order - here.order), bone.id))
    yield "homologous_bone", tuple(bone.id for bone in nearest[:_NEAREST])


def _opposites(syllabus: Syllabus, ask: Ask, joint: str) -> Iterator[str]:
    """At a joint, the opposites of what the muscle also does."""
    if ask.unit is None:
        return
    for claim in syllabus.tables["action"].by_muscle.get(ask.unit[0], ()):
        place, _, movement = claim.value.partition(".")
        if place == joint and claim.usual:
            yield f"{joint}.{syllabus.catalogue.movements[movement].antagonist}"


def _movements_at(syllabus: Syllabus, joint: str) -> Iterator[str]:
    yield from (f"{joint}.{movement}" for movement in syllabus.catalogue.joints[joint].movements)


def joints_nearby(syllabus: Syllabus, joint: str) -> tuple[str, ...]:
    """Joints of the same limb (or of the trunk) at which muscles act, the nearest first, itself included."""
    joints = syllabus.catalogue.joints
    actions = syllabus.tables["action"].by_value.items()
    acting = {value.partition(".")[0] for value, claims in actions if any(claim.usual for claim in claims)}
    here = joints[joint].order
    kin = (one for one in acting if _is_of_trunk(syllabus, one) == _is_of_trunk(syllabus, joint))
    return tuple(sorted(kin, key=lambda one: (abs(joints[one].order - here), one))[:_NEAREST])


def _is_of_trunk(syllabus: Syllabus, joint: str) -> bool:
    bones = syllabus.catalogue.bones
    return all(_in_trunk(bones[bone]) for bone in syllabus.catalogue.joints[joint].bones)


def _in_trunk(bone: Bone) -> bool:
    return bone.region in _TRUNK
