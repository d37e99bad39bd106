"""The claims of all muscles, relation by relation, under the rulings of a course."""

from collections.abc import Iterable, Iterator, Mapping
from functools import cache

from quizroom.knowledge.catalogue import Catalogue
from quizroom.knowledge.course import accepted, keyed
from quizroom.knowledge.facts import Fact
from quizroom.knowledge.model import Action, Course
from quizroom.questions.claim import RELATIONS, Claim, ClaimTable, Relation
from quizroom.questions.derived_claims import (
    contested_compartments,
    crossing_claims,
    is_contested,
    meaning_claims,
    root_claims,
)
from quizroom.questions.overlap import (
    Overlap,
    artery_overlap,
    landmark_overlap,
    nerve_branches,
    nerve_overlap,
    only_itself,
    segments_beside,
)
from quizroom.questions.same_movement import action_overlap


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
        case "root":
            return only_itself, cache(segments_beside)
        case "crossing" | "compartment" | "meaning":
            return only_itself, only_itself


def _claims(catalogue: Catalogue, course: Course, relation: Relation) -> Iterator[Claim]:
    match relation:
        case "crossing":
            yield from crossing_claims(catalogue)
        case "root":
            yield from root_claims(catalogue, course)
        case "meaning":
            yield from meaning_claims(catalogue)
        case "compartment":
            yield from contested_compartments(catalogue)
            yield from _fact_claims(catalogue, course, relation)
        case _:
            yield from _fact_claims(catalogue, course, relation)


def _fact_claims(catalogue: Catalogue, course: Course, relation: Relation) -> Iterator[Claim]:
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
        return not is_contested(catalogue.muscles[fact.muscle])
    if isinstance(fact.row, Action):
        return fact.row.role == "prime" or not fact.row.condition
    return True
