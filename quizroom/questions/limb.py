"""Where along a limb a landmark lies, as a stretch that can be compared with others.

Two stretches are in a strict order only if one ends before the other begins. The two sides of a joint
touch: an olecranon reaches past the epicondyles, a styloid process past the first carpal bones. Thumb and
great toe are left out, for their bones are not level with those of the others.
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from quizroom.knowledge.catalogue import Catalogue
from quizroom.knowledge.model import Landmark

_BONE = 4
"""Length of a bone: its ends touch its neighbours' ends, a broad place on the shaft touches both ends."""
_POINTS = frozenset(("tuberosity", "tubercle", "process"))
"""Places on a shaft that do not stretch along it."""
_FINGERS = (2, 3, 4, 5)
_TOES = ("second_toe", "third_toe", "fourth_toe", "little_toe")
_UPPER: tuple[tuple[str, ...], ...] = (
    ("humerus",),
    ("ulna", "radius"),
    ("scaphoid", "lunate", "triquetrum", "pisiform", "trapezium", "trapezoid", "capitate", "hamate"),
    tuple(f"metacarpal_{finger}" for finger in _FINGERS),
    tuple(f"proximal_phalanx_{finger}" for finger in _FINGERS),
    tuple(f"middle_phalanx_{finger}" for finger in _FINGERS),
    tuple(f"distal_phalanx_{finger}" for finger in _FINGERS),
)
_LOWER: tuple[tuple[str, ...], ...] = (
    ("femur",),
    ("tibia", "fibula"),
    (
        *("talus", "calcaneus", "navicular", "cuboid"),
        *("medial_cuneiform", "intermediate_cuneiform", "lateral_cuneiform"),
    ),
    tuple(f"metatarsal_{toe}" for toe in _FINGERS),
    tuple(f"proximal_phalanx_of_{toe}" for toe in _TOES),
    tuple(f"middle_phalanx_of_{toe}" for toe in _TOES),
    tuple(f"distal_phalanx_of_{toe}" for toe in _TOES),
)
RAYS: tuple[tuple[str, ...], ...] = (
    (
        *("glenohumeral", "elbow", "wrist", "carpometacarpal_joints", "metacarpophalangeal_joints"),
        *("proximal_interphalangeal_joints", "distal_interphalangeal_joints"),
    ),
    (
        *("glenohumeral", "elbow", "wrist"),
        *("thumb_carpometacarpal", "thumb_metacarpophalangeal", "thumb_interphalangeal"),
    ),
    (
        *("hip", "knee", "ankle", "tarsometatarsal_joints", "metatarsophalangeal_joints_of_lesser_toes"),
        *("proximal_interphalangeal_joints_of_toes", "distal_interphalangeal_joints_of_toes"),
    ),
    ("hip", "knee", "ankle", "metatarsophalangeal_joint_of_great_toe", "interphalangeal_joint_of_great_toe"),
)
"""Joints that follow each other from proximal to distal, none beside another."""


@dataclass(frozen=True, slots=True)
class Stretch:
    """From where to where along which limb (0 the upper, 1 the lower)."""

    limb: int
    start: int
    end: int

    def before(self, other: "Stretch") -> bool:
        """Whether all of it lies proximal to all of the other."""
        return self.limb == other.limb and self.end < other.start


def stretch_of(catalogue: Catalogue, sites: Iterable[str]) -> Stretch | None:
    """The stretch over which some landmarks are spread; None if any lies off the limbs' bones."""
    stretches = [one for site in sites for one in _stretches(catalogue.landmarks[site])]
    limbs = {one.limb if one else None for one in stretches}
    if len(limbs) != 1 or None in limbs:
        return None
    known = [one for one in stretches if one]
    return Stretch(known[0].limb, min(one.start for one in known), max(one.end for one in known))


def _stretches(landmark: Landmark) -> Iterator[Stretch | None]:
    if not landmark.bones:
        yield None
    for bone in landmark.bones:
        place = _places().get(bone)
        if place is None:
            yield None
        else:
            limb, level = place
            start, end = _within_bone(landmark)
            yield Stretch(limb, _BONE * level + start, _BONE * level + end)


def _within_bone(landmark: Landmark) -> tuple[int, int]:
    match landmark.position:
        case "proximal":
            return 0, 1
        case "distal":
            return 3, 4
        case "shaft":
            return (2, 2) if landmark.kind in _POINTS else (1, 3)
        case _:
            return 0, _BONE


def _places() -> Mapping[str, tuple[int, int]]:
    limbs = enumerate((_UPPER, _LOWER))
    return {bone: (limb, level) for limb, rows in limbs for level, row in enumerate(rows) for bone in row}
