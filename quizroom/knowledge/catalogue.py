"""The whole knowledge base as one frozen value, with everything looked up by id."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Protocol, TypeVar

from quizroom.knowledge.index import Anatomy, Index, build_index
from quizroom.knowledge.model import (
    Artery,
    Bone,
    Compartment,
    Course,
    Exempt,
    Joint,
    Landmark,
    Level,
    LookAlike,
    Movement,
    Muscle,
    Nerve,
    Region,
    Source,
)


class _Named(Protocol):
    @property
    def id(self) -> str: ...


_Entry = TypeVar("_Entry", bound=_Named)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Catalogue:
    """All tables of the content by id, in file order, and the index made from them.

    Two catalogues are the same only if they are one object: it is hashed and compared by identity.
    """

    sources: Mapping[str, Source]
    regions: Mapping[str, Region]
    compartments: Mapping[str, Compartment]
    bones: Mapping[str, Bone]
    landmarks: Mapping[str, Landmark]
    joints: Mapping[str, Joint]
    movements: Mapping[str, Movement]
    nerves: Mapping[str, Nerve]
    levels: Mapping[str, Level]
    arteries: Mapping[str, Artery]
    lookalikes: Mapping[str, LookAlike]
    muscles: Mapping[str, Muscle]
    courses: Mapping[str, Course]
    exempt: tuple[Exempt, ...]
    retired: Mapping[str, tuple[str, ...]]
    """Ids that were once in use, by table ("muscles", "landmarks")."""
    files: Mapping[tuple[str, str], str]
    """File of an entry by (table, id), relative to the content folder."""
    index: Index


def build_catalogue(  # noqa: PLR0913 - one argument for each table
    *,
    sources: Iterable[Source] = (),
    regions: Iterable[Region] = (),
    compartments: Iterable[Compartment] = (),
    bones: Iterable[Bone] = (),
    landmarks: Iterable[Landmark] = (),
    joints: Iterable[Joint] = (),
    movements: Iterable[Movement] = (),
    nerves: Iterable[Nerve] = (),
    levels: Iterable[Level] = (),
    arteries: Iterable[Artery] = (),
    lookalikes: Iterable[LookAlike] = (),
    muscles: Iterable[Muscle] = (),
    courses: Iterable[Course] = (),
    exempt: Iterable[Exempt] = (),
    retired: Mapping[str, tuple[str, ...]] = MappingProxyType({}),
    files: Mapping[tuple[str, str], str] = MappingProxyType({}),
) -> Catalogue:
    """The catalogue of the given entries, whatever mistakes they hold: `checks` finds those."""
    anatomy = Anatomy(
        bones=_by_id(bones),
        landmarks=_by_id(landmarks),
        joints=_by_id(joints),
        nerves=_by_id(nerves),
        arteries=_by_id(arteries),
        muscles=_by_id(muscles),
    )
    return Catalogue(
        sources=_by_id(sources),
        regions=_by_id(regions),
        compartments=_by_id(compartments),
        bones=anatomy.bones,
        landmarks=anatomy.landmarks,
        joints=anatomy.joints,
        movements=_by_id(movements),
        nerves=anatomy.nerves,
        levels=_by_id(levels),
        arteries=anatomy.arteries,
        lookalikes=_by_id(lookalikes),
        muscles=anatomy.muscles,
        courses=_by_id(courses),
        exempt=tuple(exempt),
        retired=MappingProxyType(dict(retired)),
        files=MappingProxyType(dict(files)),
        index=build_index(anatomy),
    )


def _by_id(entries: Iterable[_Entry]) -> Mapping[str, _Entry]:
    return MappingProxyType({entry.id: entry for entry in entries})
