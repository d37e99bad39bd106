"""When two things of one kind may both be right, so that they may not stand against each other.

Beside what the content says (wholes and parts, branches), careful rules of thumb for landmarks:
a surface may run over a border, two ranges of ribs may share ribs. They only ever take options away.
"""

import re
from collections.abc import Callable
from functools import cache

from quizroom.knowledge.anatomy import (
    artery_ancestors,
    artery_descendants,
    nerve_ancestors,
    nerve_descendants,
    site_parts,
    site_wholes,
    sites_overlap,
)
from quizroom.knowledge.catalogue import Catalogue
from quizroom.knowledge.model import Landmark
from quizroom.knowledge.segments import SEGMENTS

Overlap = Callable[[str], frozenset[str]]
"""From an id to all ids that may be meant by it or may be true along with it, itself included."""

_RANGE = re.compile(r"\b([CTLS]?)(\d+)(?:–[CTLS]?(\d+))?")
_SERIES = frozenset(("ribs", "atlas", "cervical_vertebrae", "thoracic_vertebrae", "lumbar_vertebrae"))
_ORDINALS = {"first": 1, "second": 2, "third": 3, "fourth": 4, "fifth": 5}
_OPPOSITES = frozenset(
    frozenset(pair)
    for pair in (
        ("anterior", "posterior"),
        ("medial", "lateral"),
        ("superior", "inferior"),
        ("costal", "posterior"),
    )
)
_BROAD = frozenset(("part", "end", "half", "third", "shaft", "expansion", "sheath", "expansions"))
_ON_A_SURFACE = frozenset(
    ("border", "angle", "line", "ridge", "crest", "groove", "fossa", "tuberosity", "impression", "spine")
)
_ALONG_A_BORDER = frozenset(("angle", "line", "ridge", "crest", "membrane", "septum", "surface"))


def landmark_overlap(catalogue: Catalogue) -> Overlap:
    """Landmarks that may be the same place or share ground."""
    on_bone: dict[str, list[Landmark]] = {}
    for landmark in catalogue.landmarks.values():
        for bone in landmark.bones:
            on_bone.setdefault(bone, []).append(landmark)

    @cache
    def overlapping(site: str) -> frozenset[str]:
        here = catalogue.landmarks[site]
        near = {other.id: other for bone in here.bones for other in on_bone[bone]}
        near |= {
            other: catalogue.landmarks[other]
            for other in site_wholes(catalogue, site) | site_parts(catalogue, site)
        }
        sharing = (other.id for other in near.values() if may_share_ground(catalogue, here, other))
        return frozenset((site, *sharing))

    return overlapping


def may_share_ground(catalogue: Catalogue, one: Landmark, other: Landmark) -> bool:
    """Whether an attachment to one of two landmarks of a bone may be meant by the other."""
    if sites_overlap(catalogue, one.id, other.id) or _same_words(one, other):
        return True
    ours, theirs = _range_of(one), _range_of(other)
    if ours and theirs:
        return _ranges_meet(ours, theirs)
    if one.tissue == other.tissue == "bone" and len(one.bones) != len(other.bones):
        return True
    return _broad_over(one, other) or _broad_over(other, one)


def nerve_overlap(catalogue: Catalogue) -> Overlap:
    """A nerve, all it comes from and all that comes from it."""
    return cache(
        lambda nerve: nerve_ancestors(catalogue, nerve) | nerve_descendants(catalogue, nerve) | {nerve}
    )


def nerve_branches(catalogue: Catalogue) -> Overlap:
    """A nerve and its branches: who is reached by these is supplied by the nerve."""
    return cache(lambda nerve: nerve_descendants(catalogue, nerve) | {nerve})


def artery_overlap(catalogue: Catalogue) -> Overlap:
    """An artery, all that feed it and all that it feeds."""
    return cache(
        lambda artery: artery_ancestors(catalogue, artery) | artery_descendants(catalogue, artery) | {artery}
    )


def only_itself(concept: str) -> frozenset[str]:
    """For things that exclude all others of their kind."""
    return frozenset((concept,))


def segments_beside(segment: str) -> frozenset[str]:
    """A spinal segment with its neighbours: most books differ by one."""
    place = SEGMENTS.index(segment)
    return frozenset(SEGMENTS[max(0, place - 1) : place + 2])


def _same_words(one: Landmark, other: Landmark) -> bool:
    ones = {text.casefold() for text in (one.label, *one.synonyms)}
    return not ones.isdisjoint(text.casefold() for text in (other.label, *other.synonyms))


def _range_of(landmark: Landmark) -> tuple[str, str, int, int] | None:
    """Kind, letter, first and last number of a landmark that is a range of ribs or vertebrae."""
    if landmark.bones[0] not in _SERIES:
        return None
    first_word = landmark.name.split(" ")[0]
    kind = "rib" if landmark.bones[0] == "ribs" else first_word
    ordinals = [_ORDINALS[word] for word in landmark.name.split(" ") if word in _ORDINALS]
    if ordinals:
        return kind, "", ordinals[0], ordinals[-1]
    found = _RANGE.search(landmark.name)
    if not found:
        return None
    letter, start, end = found.groups()
    return kind, letter, int(start), int(end or start)


def _ranges_meet(one: tuple[str, str, int, int], other: tuple[str, str, int, int]) -> bool:
    """A tubercle may be that of a transverse process."""
    kinds = {one[0], other[0]}
    alike = len(kinds) == 1 or ("transverse" in kinds and not kinds.isdisjoint(("anterior", "posterior")))
    return alike and one[1] == other[1] and one[2] <= other[3] and other[2] <= one[3]


def _broad_over(broad: Landmark, other: Landmark) -> bool:
    apart = {broad.position, other.position} == {"proximal", "distal"}
    level = broad.position == other.position or "" in (broad.position, other.position)
    if broad.kind in _BROAD:
        return not apart and (broad.kind != "shaft" or level)
    if broad.kind == "surface":
        if other.kind == "surface":
            return not _opposite(broad, other)
        return level and other.kind in _ON_A_SURFACE and not _lies_opposite(broad, other)
    return broad.kind == "border" and other.kind in _ALONG_A_BORDER


def _opposite(one: Landmark, other: Landmark) -> bool:
    return frozenset((one.name.split(" ")[0], other.name.split(" ")[0])) in _OPPOSITES


def _lies_opposite(surface: Landmark, other: Landmark) -> bool:
    """Whether the other lies within the opposite surface, as the infraspinous fossa does."""
    direction = surface.name.split(" ")[0]
    return any(
        frozenset((direction, whole.rpartition(".")[2].split("_")[0])) in _OPPOSITES for whole in other.within
    )
