"""What the content says of every muscle, relation by relation, and how sure a question may be of it.

A claim is *certain* if it may be a key: recorded as core, or ruled to be the key by the course.
Every other recorded reading is true enough never to be called wrong. An assistant in one book is a
mover in the next: as prime mover it is neither key nor wrong option.
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from typing import Literal, get_args

from quizroom.knowledge.anatomy import joints_crossed, joints_possibly_crossed
from quizroom.knowledge.catalogue import Catalogue
from quizroom.knowledge.course import accepted, keyed
from quizroom.knowledge.facts import WHOLE, Fact, row_fact, rows_of
from quizroom.knowledge.model import Action, Course, Muscle
from quizroom.questions.overlap import (
    Overlap,
    artery_overlap,
    landmark_overlap,
    nerve_branches,
    nerve_overlap,
    only_itself,
)
from quizroom.questions.same_movement import action_overlap

Relation = Literal[
    "origin", "insertion", "attachment", "nerve", "artery", "action", "prime", "crossing", "compartment"
]
RELATIONS: tuple[Relation, ...] = get_args(Relation)


@dataclass(frozen=True, slots=True, kw_only=True)
class Claim:
    """One reading: this muscle (or part of it) has this value. `facts` are what it rests on."""

    muscle: str
    part: str
    value: str
    certain: bool
    usual: bool
    """The standard account under the course's rulings; a certain claim is usual and fit to be asked."""
    accepted: bool
    """Whether a typed answer may say so: usual, or a variant that the course takes."""
    facts: tuple[str, ...]
    sources: tuple[str, ...]
    id: str = ""
    """Id of what is asked: that of the fact, or one made alike for what is derived."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ClaimTable:
    """All claims of one relation.

    `overlap` gives what may not stand beside a value as another option; `reach` gives the values
    that make a muscle count for a value, as a branch counts for its nerve.
    """

    by_muscle: Mapping[str, tuple[Claim, ...]]
    by_value: Mapping[str, tuple[Claim, ...]]
    overlap: Overlap
    reach: Overlap


def claim_tables(catalogue: Catalogue, course: Course) -> dict[Relation, ClaimTable]:
    """The claims of all muscles of the catalogue under the rulings of a course."""
    return {relation: _table(catalogue, course, relation) for relation in RELATIONS}


def _table(catalogue: Catalogue, course: Course, relation: Relation) -> ClaimTable:
    claims = list(_claims(catalogue, course, relation))
    overlap, reach = _overlaps(catalogue, relation)
    return ClaimTable(
        by_muscle=_grouped((claim.muscle, claim) for claim in claims),
        by_value=_grouped((claim.value, claim) for claim in claims),
        overlap=overlap,
        reach=reach,
    )


def _grouped(pairs: Iterable[tuple[str, Claim]]) -> Mapping[str, tuple[Claim, ...]]:
    groups: dict[str, list[Claim]] = {}
    for key, claim in pairs:
        groups.setdefault(key, []).append(claim)
    return {key: tuple(group) for key, group in groups.items()}


def _overlaps(catalogue: Catalogue, relation: Relation) -> tuple[Overlap, Overlap]:
    match relation:
        case "origin" | "insertion" | "attachment":
            sites = landmark_overlap(catalogue)
            return sites, sites
        case "nerve":
            return nerve_overlap(catalogue), nerve_branches(catalogue)
        case "artery":
            arteries = artery_overlap(catalogue)
            return arteries, arteries
        case "action" | "prime":
            actions = cache(action_overlap)
            return actions, actions
        case "crossing" | "compartment":
            return only_itself, only_itself


def _claims(catalogue: Catalogue, course: Course, relation: Relation) -> Iterator[Claim]:
    if relation == "crossing":
        for muscle in catalogue.muscles.values():
            yield from _crossings(catalogue, muscle)
        return
    if relation == "compartment":
        yield from _contested_compartments(catalogue)
    kinds = {"attachment": ("origin", "insertion"), "prime": ("action",)}.get(relation, (relation,))
    for fact in catalogue.index.facts.values():
        if fact.kind in kinds:
            yield _claim(catalogue, course, relation, fact)


def _claim(catalogue: Catalogue, course: Course, relation: Relation, fact: Fact) -> Claim:
    assists = relation == "prime" and isinstance(fact.row, Action) and fact.row.role == "assistant"
    usual = keyed(course, fact) and not assists
    return Claim(
        muscle=fact.muscle,
        part=fact.part,
        value=fact.value,
        certain=usual and _may_be_asked(catalogue, relation, fact),
        usual=usual,
        accepted=accepted(course, fact),
        facts=(fact.id,),
        sources=fact.sources,
        id=fact.id,
    )


def _may_be_asked(catalogue: Catalogue, relation: Relation, fact: Fact) -> bool:
    if relation == "compartment":
        return not _is_contested(catalogue.muscles[fact.muscle])
    if isinstance(fact.row, Action):
        return fact.row.role == "prime" or not fact.row.condition
    return True


def _is_contested(muscle: Muscle) -> bool:
    return any(row.about == "compartment" for row in muscle.differ)


def _contested_compartments(catalogue: Catalogue) -> Iterator[Claim]:
    """A muscle whose compartment is contested may belong to any of its region and the next ones."""
    regions = sorted(catalogue.regions.values(), key=lambda region: region.order)
    place = {region.id: number for number, region in enumerate(regions)}
    for muscle in filter(_is_contested, catalogue.muscles.values()):
        for compartment in catalogue.compartments.values():
            if abs(place[compartment.region] - place[muscle.region]) <= 1:
                yield Claim(
                    muscle=muscle.id,
                    part="",
                    value=compartment.id,
                    certain=False,
                    usual=False,
                    accepted=False,
                    facts=(),
                    sources=muscle.sources,
                )


def _crossings(catalogue: Catalogue, muscle: Muscle) -> Iterator[Claim]:
    for part in [one.id for one in muscle.parts] or [""]:
        crossed = joints_crossed(catalogue, muscle.id, part)
        facts = _core_attachments(muscle, part)
        for joint in joints_possibly_crossed(catalogue, muscle.id, part):
            yield Claim(
                muscle=muscle.id,
                part=part,
                value=joint,
                certain=joint in crossed,
                usual=joint in crossed,
                accepted=joint in crossed,
                facts=tuple(fact.id for fact in facts),
                sources=tuple(dict.fromkeys(source for fact in facts for source in fact.sources)),
                id=f"{muscle.id}/crossing/{part or WHOLE}/{joint}",
            )


def _core_attachments(muscle: Muscle, part: str) -> list[Fact]:
    facts = (
        row_fact(muscle.id, kind, row)
        for kind, _, row in rows_of(muscle)
        if kind in ("origin", "insertion") and row.part in ("", part)
    )
    return [fact for fact in facts if fact.status == "core"]
