"""The slice against Uberon (CC BY 3.0, see CREDITS.md): cross-references, attachments and nerves."""

from quizroom.knowledge.anatomy import nerve_ancestors
from quizroom.knowledge.facts import Fact, slug
from quizroom.knowledge.lexicon import lexicon
from quizroom.knowledge.terms import normalise
from tests.reference.comparison import Row, Verdict, comparable_rows, content, hold, rows_of
from tests.reference.places import is_named, judge_attachment

TABLE = "uberon"
NERVES_BY_LOOSE_NAME = {"thoracic nerve": "long thoracic nerve"}
"""Uberon's nerve and the name in the note of its row."""


def attachment(row: Row) -> Verdict:
    return judge_attachment(content(), content().muscles[slug(row.muscle)], row)


def named_nerves(row: Row) -> set[str]:
    name = NERVES_BY_LOOSE_NAME.get(row.value, row.value)
    return {term.concept for term in lexicon(content()).get(normalise(name), ()) if term.kind == "nerve"}


def supply(row: Row) -> Verdict:
    """The named nerve or a branch of it is recorded for the muscle."""
    named = named_nerves(row)
    supplies = content().muscles[slug(row.muscle)].nerves
    found = any(named & {one.nerve, *nerve_ancestors(content(), one.nerve)} for one in supplies)
    return "not comparable" if not named else "agrees" if found else "disagrees"


def cross_reference(row: Row) -> Verdict:
    ids = content().muscles[slug(row.muscle)].ids
    ours = ids.uberon if row.fact_type == "uberon_id" else ids.fma
    others = {
        one.value for one in rows_of(TABLE) if (one.muscle, one.fact_type) == (row.muscle, row.fact_type)
    }
    return "not comparable" if not ours else "agrees" if ours in others else "disagrees"


def test_its_attachments_are_recorded() -> None:
    hold(TABLE, comparable_rows(TABLE, "origin", "insertion"), attachment, agree_at_least=40)


def test_its_nerves_are_recorded() -> None:
    hold(TABLE, comparable_rows(TABLE, "nerve"), supply, agree_at_least=8)


def test_cross_references_are_its_own() -> None:
    hold(TABLE, comparable_rows(TABLE, "uberon_id", "fma_id"), cross_reference, agree_at_least=60)


def is_there(fact: Fact) -> bool:
    """Whether the table has what the fact cites it for, be it in the curator's note."""
    rows = [row for row in rows_of(TABLE) if slug(row.muscle) == fact.muscle and row.fact_type == fact.kind]
    if fact.kind == "nerve":
        named = {nerve for row in rows for nerve in named_nerves(row)}
        return bool(named & {fact.value, *nerve_ancestors(content(), fact.value)})
    return is_named(content(), fact.value, [*rows, *(row._replace(value=row.note) for row in rows)])


def test_it_is_cited_only_for_what_it_says() -> None:
    cited = [fact for fact in content().index.facts.values() if fact.row and TABLE in fact.sources]
    assert [fact.id for fact in cited if not is_there(fact)] == []
    assert len(cited) > 30
