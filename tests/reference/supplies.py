"""Nerves and arteries of outside tables, held against ours; and what a name of theirs means here."""

import re
from collections.abc import Iterator, Mapping
from functools import cache

from quizroom.knowledge.anatomy import artery_ancestors, nerve_ancestors
from quizroom.knowledge.catalogue import Catalogue
from quizroom.knowledge.lexicon import Term, lexicon
from quizroom.knowledge.model import TermKind
from quizroom.knowledge.terms import normalise
from tests.reference.rows import Row, targets
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
