"""Compartments, ids and names of outside tables, held against ours."""

from collections.abc import Iterator

from quizroom.knowledge.catalogue import Catalogue
from quizroom.knowledge.lexicon import part_concept
from tests.reference.rows import Row, every_row, targets, words
from tests.reference.supplies import concepts
from tests.reference.verdicts import Judgement, held, joined


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
