"""Who is near whom: the look-ups from which likely errors are drawn."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise

from quizroom.knowledge.catalogue import Catalogue
from quizroom.knowledge.model import Muscle

_LIMBS = (("forearm", "leg"), ("arm", "thigh"), ("hand", "foot"))
_JOINTS_OF_LIMBS = (
    ("glenohumeral", "hip"),
    ("elbow", "knee"),
    ("wrist", "ankle"),
    ("carpometacarpal_joints", "tarsometatarsal_joints"),
    ("metacarpophalangeal_joints", "metatarsophalangeal_joints_of_lesser_toes"),
    ("thumb_metacarpophalangeal", "metatarsophalangeal_joint_of_great_toe"),
    ("thumb_interphalangeal", "interphalangeal_joint_of_great_toe"),
    ("proximal_interphalangeal_joints", "proximal_interphalangeal_joints_of_toes"),
    ("distal_interphalangeal_joints", "distal_interphalangeal_joints_of_toes"),
)
_TRUNK = "trunk"
_UPPER_LIMB = ("shoulder_girdle", "shoulder", "arm", "forearm", "hand")
_LOWER_LIMB = ("hip", "thigh", "leg", "foot")
HEAD_AND_NECK = (
    *("face", "mastication", "orbit", "middle_ear", "tongue", "palate", "pharynx", "larynx", "neck"),
)
LIMB_OF: Mapping[str, str] = {
    **dict.fromkeys(_UPPER_LIMB, "upper limb"),
    **dict.fromkeys(_LOWER_LIMB, "lower limb"),
}
_FAR_APART = (("perineum", "shoulder_girdle"), ("hand", "hip"))
"""Regions that follow one another in a course and lie nowhere near."""
_HAND_AND_FOOT = (
    ("pollicis", "hallucis"),
    ("_hand", "_foot"),
    ("palmar_interossei", "plantar_interossei"),
    ("flexor_digitorum_superficialis", "flexor_digitorum_brevis"),
    ("flexor_digitorum_profundus", "flexor_digitorum_longus"),
    ("extensor_digitorum", "extensor_digitorum_longus"),
    ("palmaris_longus", "plantaris"),
    ("interossei_of_hand", "interossei_of_foot"),
)
"""Words by which names of serial homologues differ; a name that nothing bears is passed over."""
Groups = Mapping[str, tuple[str, ...]]


@dataclass(frozen=True, kw_only=True, eq=False)
class Kinship:
    """Groups of ids of one catalogue, each in content order, each made when first asked for."""

    catalogue: Catalogue

    @cached_property
    def lookalikes(self) -> Groups:
        """For each member of look-alike sets the other members."""
        sets = self.catalogue.lookalikes.values()
        return _grouped((one, other) for each in sets for one in each.members for other in each.members)

    @cached_property
    def by_compartment(self) -> Groups:
        """Muscles of each compartment."""
        return _grouped((muscle.compartment, muscle.id) for muscle in self.catalogue.muscles.values())

    @cached_property
    def by_region(self) -> Groups:
        """Muscles of each region."""
        return _grouped((muscle.region, muscle.id) for muscle in self.catalogue.muscles.values())

    @cached_property
    def beside_region(self) -> Groups:
        """Muscles of the regions before and after each region, as far as these lie near."""
        regions = sorted(self.catalogue.regions.values(), key=lambda region: region.order)
        following = [(one.id, other.id) for one, other in pairwise(regions)]
        beside = [pair for pair in following if pair not in _FAR_APART]
        return _grouped(
            (here, muscle)
            for one, other in beside
            for here, there in ((one, other), (other, one))
            for muscle in self.by_region.get(there, ())
        )

    def of_area(self, region: str) -> tuple[str, ...]:
        """Muscles of the limb in which a region lies, of head and neck, or of the trunk."""
        area = _area(region)
        return tuple(one.id for one in self.catalogue.muscles.values() if _area(one.region) == area)

    def around(self, region: str) -> tuple[str, ...]:
        """Muscles of a region, then of those beside it."""
        return (*self.by_region.get(region, ()), *self.beside_region.get(region, ()))

    @cached_property
    def compartments_by_region(self) -> Groups:
        """Compartments of each region."""
        return _grouped((one.region, one.id) for one in self.catalogue.compartments.values())

    @cached_property
    def by_bone(self) -> Groups:
        """Landmarks of each bone."""
        landmarks = self.catalogue.landmarks.values()
        return _grouped((bone, landmark.id) for landmark in landmarks for bone in landmark.bones)

    @cached_property
    def by_landmark_name(self) -> Groups:
        """Landmarks with the same name on different bones, such as the bases of the metacarpals."""
        return _grouped((landmark.name, landmark.id) for landmark in self.catalogue.landmarks.values())

    @cached_property
    def by_nerve_parent(self) -> Groups:
        """Nerves that come from the same trunk, cord or nerve."""
        nerves = self.catalogue.nerves.values()
        return _grouped((parent, nerve.id) for nerve in nerves for parent in nerve.parents)

    @cached_property
    def by_artery_parent(self) -> Groups:
        """Branches of each artery."""
        arteries = self.catalogue.arteries.values()
        return _grouped((artery.parent, artery.id) for artery in arteries if artery.parent)

    def siblings_of_nerves(self, muscle: Muscle) -> tuple[str, ...]:
        """Nerves from the same trunks, cords or nerves as those of a muscle."""
        parents = (one for row in muscle.nerves for one in self.catalogue.nerves[row.nerve].parents)
        return tuple(dict.fromkeys(nerve for parent in parents for nerve in self.by_nerve_parent[parent]))

    def homologous_compartments(self, compartment: str) -> tuple[str, ...]:
        """The compartment of the same name in the other limb."""
        swapped = (other for pair in _LIMBS for other in _swapped(compartment, pair))
        return tuple(other for other in swapped if other in self.catalogue.compartments)

    def homologous_joints(self, joint: str) -> tuple[str, ...]:
        """The joint of the other limb that answers to one."""
        pairs = (pair for pair in _JOINTS_OF_LIMBS if joint in pair)
        others = (other for pair in pairs for other in pair if other != joint)
        return tuple(other for other in others if other in self.catalogue.joints)

    def homologous_muscles(self, muscle: str) -> tuple[str, ...]:
        """The muscles that hand and foot have alike."""
        alike = {other for pair in _HAND_AND_FOOT for other in _swapped(muscle, pair)}
        return tuple(other for other in sorted(alike) if other in self.catalogue.muscles)


def _area(region: str) -> str:
    return "head and neck" if region in HEAD_AND_NECK else LIMB_OF.get(region, _TRUNK)


def _swapped(text: str, pair: tuple[str, str]) -> Iterator[str]:
    one, other = pair
    if one in text:
        yield text.replace(one, other)
    if other in text:
        yield text.replace(other, one)


def joints_by_distance(catalogue: Catalogue, acting: Iterable[str], joint: str) -> tuple[str, ...]:
    """The joints among `acting` of the same limb, or of the trunk, by their distance from one.

    Where limb and trunk meet, a joint is of the limb, and also near those of the trunk.
    """
    here = catalogue.joints[joint].order
    areas = _areas(catalogue, joint)
    own = areas - {_TRUNK} or areas
    kin = (one for one in acting if own & _areas(catalogue, one))
    return tuple(sorted(kin, key=lambda one: (abs(catalogue.joints[one].order - here), one)))


def _areas(catalogue: Catalogue, joint: str) -> frozenset[str]:
    """The limbs whose bones meet at a joint; that of the trunk if it has bones of no limb."""
    regions = {catalogue.bones[bone].region for bone in catalogue.joints[joint].bones}
    return frozenset(LIMB_OF.get(region, _TRUNK) for region in regions)


def _grouped(pairs: Iterable[tuple[str, str]]) -> Groups:
    groups: dict[str, dict[str, None]] = {}
    for key, member in pairs:
        groups.setdefault(key, {})[member] = None
    return {key: tuple(members) for key, members in groups.items()}
