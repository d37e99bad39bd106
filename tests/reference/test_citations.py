"""A fact cites an outside table only for what that table says, be it in a doubted row or a note."""

from quizroom.knowledge.anatomy import nerve_ancestors
from quizroom.knowledge.facts import Fact
from quizroom.knowledge.model import Action, Attachment, Supply, TermKind
from tests.reference.motions import is_claimed
from tests.reference.places import is_named
from tests.reference.rows import Row, rows_of, targets
from tests.reference.supplies import concepts
from tests.shipped import content


def cited(table: str) -> list[Fact]:
    return [fact for fact in content().index.facts.values() if fact.row and table in fact.sources]


def rows_about(table: str, fact: Fact) -> list[Row]:
    """The rows of the fact's kind, and those of attachments that tell no end."""
    ends = ("attachment",) if fact.kind in ("origin", "insertion") else ()
    rows = [row for row in rows_of(table) if row.fact_type in (fact.kind, *ends)]
    own = [row for row in rows if fact.muscle in {target.muscle for target in targets(row)}]
    return [*own, *(row._replace(value=f"{row.value}; {row.note}") for row in own)]


def is_there(table: str, fact: Fact) -> bool:
    rows = rows_about(table, fact)
    if isinstance(fact.row, Action):
        return is_claimed(fact.row.joint, fact.row.movement, rows)
    if isinstance(fact.row, Attachment):
        return is_named(content(), fact.value, rows)
    kind: TermKind = "nerve" if isinstance(fact.row, Supply) else "artery"
    named = {one for row in rows for one in concepts(content(), row.value, kind)}
    return bool(named & {fact.value, *nerve_ancestors(content(), fact.value)})


def test_openstax_is_cited_only_for_what_it_says() -> None:
    facts = cited("openstax_ap2e")
    assert [fact.id for fact in facts if not is_there("openstax_ap2e", fact)] == []
    assert len(facts) > 400


def test_uberon_is_cited_only_for_what_it_says() -> None:
    facts = cited("uberon")
    assert [fact.id for fact in facts if not is_there("uberon", fact)] == []
    assert len(facts) > 150
