"""Actions in the words of outside tables, as joints and movements."""

import re
from collections.abc import Iterable
from typing import NamedTuple

from quizroom.knowledge.model import Muscle
from tests.reference.comparison import Row, Verdict

_FINGERS = ("metacarpophalangeal_joints", "proximal_interphalangeal_joints", "distal_interphalangeal_joints")

# the part that moves -> the joints at which it may move
TARGETS: dict[str, tuple[str, ...]] = {
    "humerus": ("glenohumeral",),
    "forearm": ("elbow", "radioulnar_joints"),
    "wrist": ("wrist", "intercarpal_joints"),
    "hand": ("wrist", "intercarpal_joints"),
    "index finger": _FINGERS,
    "little finger": _FINGERS,
    "fingers": _FINGERS,
    "thumb": ("thumb_carpometacarpal", "thumb_metacarpophalangeal", "thumb_interphalangeal"),
    "scapula": ("scapulothoracic",),
    "clavicle": ("sternoclavicular",),
    "cervical spine": ("atlanto_occipital_joints", "cervical_intervertebral_joints"),
    "spine": ("atlanto_occipital_joints", "cervical_intervertebral_joints"),
    "ribs": ("costovertebral_joints", "sternocostal_joints"),
}
MOVEMENTS: tuple[tuple[str, tuple[tuple[str, ...], ...]], ...] = (
    ("medial and lateral rotation", (("medial_rotation",), ("lateral_rotation",))),
    ("medial rotation", (("medial_rotation",),)),
    ("lateral rotation", (("lateral_rotation",),)),
    ("rotates inferiorly", (("downward_rotation",),)),
    ("rotests inferiorly", (("downward_rotation",),)),
    ("flexion", (("flexion",),)),
    ("extension", (("extension",),)),
    ("abduction", (("abduction", "radial_deviation"),)),
    ("adduction", (("adduction", "ulnar_deviation"),)),
    ("pronation", (("pronation",),)),
    ("supination", (("supination",),)),
    ("depress", (("depression",),)),
    ("elevat", (("elevation",),)),
    ("extends", (("extension",),)),
    ("retract", (("retraction",),)),
    ("protract", (("protraction",),)),
)
_WORD = re.compile("|".join([*TARGETS, *(words for words, _ in MOVEMENTS)]))


class Claim(NamedTuple):
    """At one of these joints, one of these movements."""

    joints: tuple[str, ...]
    movements: tuple[str, ...]


def claims(value: str) -> list[Claim]:
    """What an action column claims: "Wrist; hand: Flexion; abduction" is two movements at the wrist."""
    meanings = dict(MOVEMENTS)
    found: list[Claim] = []
    joints: tuple[str, ...] = ()
    moved = False
    for match in _WORD.finditer(value.lower()):
        word = match.group()
        if word in TARGETS:
            joints = TARGETS[word] if moved else (*joints, *TARGETS[word])
            moved = False
            continue
        moved = True
        found += [Claim(joints, movements) for movements in meanings[word]]
    return found


def is_claimed(joint: str, movement: str, rows: Iterable[Row]) -> bool:
    """Whether one of the rows claims the movement at the joint."""
    made = (claim for row in rows for claim in claims(row.value))
    return any(joint in claim.joints and movement in claim.movements for claim in made)


def judge_action(muscle: Muscle, row: Row) -> Verdict:
    """Whether every movement that the row claims is recorded, with any status."""
    recorded = {(action.joint, action.movement) for action in muscle.actions}
    made = claims(row.value)
    if not made:
        return "not comparable"
    met = [
        any((joint, movement) in recorded for joint in one.joints for movement in one.movements)
        for one in made
    ]
    return "agrees" if all(met) else "disagrees"
