"""Nerves, arteries, compartments, ids and names of outside tables, held against ours."""

import re
from collections.abc import Iterator, Mapping
from functools import cache

from quizroom.knowledge.anatomy import artery_ancestors, nerve_ancestors
from quizroom.knowledge.catalogue import Catalogue
from quizroom.knowledge.lexicon import Term, lexicon, part_concept
from quizroom.knowledge.model import TermKind
from quizroom.knowledge.terms import normalise
from tests.reference.rows import Row, every_row, targets, words
from tests.reference.verdicts import Judgement, facts_about, held, joined

LOOSE_NAMES = {
    "thoracic nerve": "long thoracic nerve",
    "cervical spinal nerves": "anterior rami of the cervical nerves",
}
"""Names of nerves that are too short, and what the notes of their rows say they mean."""


def judge_nerve(catalogue: Catalogue, row: Row) -> Iterator[Judgement]:
    """Whether the named nerve, a branch of it or one that it comes from is recorded."""
    named = concepts(catalogue, row.value, "nerve")
    related = (
        {
            one
            for fact in facts_about(catalogue, target, "nerve")
            for one in _line(catalogue, fact.value, named)
        }
        for target in targets(row)
    )
    yield Judgement("nerve", joined(held(told=bool(named), recorded=bool(one)) for one in related))


def judge_artery(catalogue: Catalogue, row: Row) -> Iterator[Judgement]:
    """Whether the named artery or a branch of it is recorded."""
    named = concepts(catalogue, row.value, "artery")
    for target in targets(row):
        ours = {fact.value for fact in facts_about(catalogue, target, "artery")}
        lines = {one for artery in ours for one in (artery, *artery_ancestors(catalogue, artery))}
        yield Judgement("artery", held(told=bool(named), recorded=bool(named & lines)))


def judge_compartment(catalogue: Catalogue, row: Row) -> Iterator[Judgement]:
    """Whether the muscle lies in the compartment that a table's heading means."""
    wanted = words("compartments")[row.value]
    ours = (catalogue.muscles[target.muscle].compartment for target in targets(row))
    yield Judgement("compartment", joined(held(told=True, recorded=one in wanted) for one in ours))


def judge_id(catalogue: Catalogue, row: Row) -> Iterator[Judgement]:
    """Whether our cross-reference is one that the table gives; groups and heads have none of ours."""
    (one, *others) = targets(row)
    ids = catalogue.muscles[one.muscle].ids
    ours = ids.uberon if row.fact_type == "uberon_id" else ids.fma
    given = {
        other.value
        for other in every_row("uberon")
        if (other.muscle, other.fact_type) == (row.muscle, row.fact_type)
    }
    yield Judgement("id", held(told=not others and not one.part, recorded=ours in given))


def judge_name(catalogue: Catalogue, row: Row) -> Iterator[Judgement]:
    """Whether a name means the same muscle here; one that we do not carry cannot be compared."""
    named = concepts(catalogue, row.value, "muscle")
    meant = {part_concept(*target) for target in targets(row)}
    yield Judgement("name", held(told=bool(named), recorded=bool(named & meant)))


def concepts(catalogue: Catalogue, name: str, kind: TermKind) -> set[str]:
    """What a name means here, without what stands in brackets behind it."""
    plain = LOOSE_NAMES.get(name, re.sub(r" \([^)]*\)$", "", name))
    return {term.concept for term in lexicon_of(catalogue).get(normalise(plain), ()) if term.kind == kind}


@cache
def lexicon_of(catalogue: Catalogue) -> Mapping[str, tuple[Term, ...]]:
    """All terms of a catalogue by form."""
    return lexicon(catalogue)


def _line(catalogue: Catalogue, ours: str, named: set[str]) -> set[str]:
    above = {ours, *nerve_ancestors(catalogue, ours)} & named
    return above | {one for one in named if ours in nerve_ancestors(catalogue, one)}
