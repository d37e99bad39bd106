"""Who is near whom: the look-ups from which likely errors are drawn."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise

from quizroom.knowledge.catalogue import Catalogue

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
        """Muscles of the regions before and after each region."""
        regions = sorted(self.catalogue.regions.values(), key=lambda region: region.order)
        beside = [(one.id, other.id) for one, other in pairwise(regions)]
        return _grouped(
            (here, muscle)
            for one, other in beside
            for here, there in ((one, other), (other, one))
            for muscle in self.by_region.get(there, ())
        )

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


def _grouped(pairs: Iterable[tuple[str, str]]) -> Groups:
    groups: dict[str, dict[str, None]] = {}
    for key, member in pairs:
        groups.setdefault(key, {})[member] = None
    return {key: tuple(members) for key, members in groups.items()}
