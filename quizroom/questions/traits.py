"""What a muscle has in common with others: its nerves, group, joints crossed and movements.

A trait is *sure* by the standard account and *possible* by any recorded reading.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from quizroom.knowledge.anatomy import nerve_ancestors
from quizroom.knowledge.catalogue import Catalogue
from quizroom.questions.claim import Claim, ClaimTable, Relation
from quizroom.questions.words import is_true_joint

SHARED: tuple[Relation, ...] = ("nerve", "compartment", "crossing", "action")
"""The properties by which one of several muscles may be the odd one out."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Trait:
    """The values of one property of one muscle."""

    sure: frozenset[str]
    possible: frozenset[str]


Traits = Mapping[Relation, Trait]


def traits_of(catalogue: Catalogue, tables: Mapping[Relation, ClaimTable], muscle: str) -> Traits:
    """The shared properties of a muscle."""
    return {
        relation: _trait(catalogue, tables[relation], relation, tables[relation].by_muscle.get(muscle, ()))
        for relation in SHARED
    }


def is_asked_nerve(catalogue: Catalogue, nerve: str) -> bool:
    """Whether it is a nerve or a branch with a name of its own, no root, cord or nameless branches."""
    known = catalogue.nerves[nerve]
    return known.kind in ("nerve", "branch") and "nerve" in known.name


def _trait(catalogue: Catalogue, table: ClaimTable, relation: Relation, claims: Sequence[Claim]) -> Trait:
    recorded = [claim.value for claim in claims]
    usual = [claim.value for claim in claims if claim.usual]
    match relation:
        case "nerve":
            above = [_named_line(catalogue, nerve) for nerve in usual]
            wholly = above[0].intersection(*above) if above else frozenset[str]()
            return Trait(sure=wholly, possible=_union(_named_line(catalogue, nerve) for nerve in recorded))
        case "crossing":
            true = {joint.id for joint in catalogue.joints.values() if is_true_joint(joint)}
            return Trait(sure=frozenset(usual) & true, possible=frozenset(recorded) & true)
        case _:
            fit = (claim.value for claim in claims if claim.usual and (claim.certain or relation == "action"))
            return Trait(sure=frozenset(fit), possible=_union(map(table.overlap, recorded)))


def _named_line(catalogue: Catalogue, nerve: str) -> frozenset[str]:
    """A nerve and what it comes from, as far as it has a name to ask for."""
    line = (nerve, *nerve_ancestors(catalogue, nerve))
    return frozenset(one for one in line if is_asked_nerve(catalogue, one))


def _union(groups: Iterable[frozenset[str]]) -> frozenset[str]:
    return frozenset[str]().union(*groups)
