"""The slice against the muscle tables of OpenStax Anatomy and Physiology 2e (CC BY 4.0, see CREDITS.md)."""

from quizroom.knowledge.facts import Fact, slug
from quizroom.knowledge.model import Action
from tests.reference.comparison import Row, Verdict, comparable_rows, content, hold, rows_of
from tests.reference.motions import Claim, claims, is_claimed, judge_action
from tests.reference.places import is_named, judge_attachment

TABLE = "openstax_ap2e"


def attachment(row: Row) -> Verdict:
    return judge_attachment(content(), content().muscles[slug(row.muscle)], row)


def action(row: Row) -> Verdict:
    return judge_action(content().muscles[slug(row.muscle)], row)


def test_its_origins_are_recorded() -> None:
    hold(TABLE, comparable_rows(TABLE, "origin"), attachment, agree_at_least=55)


def test_its_insertions_are_recorded() -> None:
    hold(TABLE, comparable_rows(TABLE, "insertion"), attachment, agree_at_least=40)


def test_its_actions_are_recorded() -> None:
    hold(TABLE, comparable_rows(TABLE, "action"), action, agree_at_least=30)


def test_an_action_column_is_read_as_joints_and_movements() -> None:
    assert claims("Wrist; hand: Flexion") == [
        Claim(("wrist", "intercarpal_joints", "wrist", "intercarpal_joints"), ("flexion",))
    ]
    thumb = ("thumb_carpometacarpal", "thumb_metacarpophalangeal", "thumb_interphalangeal")
    assert claims("Thumb: abduction; wrist: abduction") == [
        Claim(thumb, ("abduction", "radial_deviation")),
        Claim(("wrist", "intercarpal_joints"), ("abduction", "radial_deviation")),
    ]


def is_there(fact: Fact) -> bool:
    """Whether the table has what the fact cites it for; its doubted rows count, it does say them."""
    rows = [row for row in rows_of(TABLE) if slug(row.muscle) == fact.muscle and row.fact_type == fact.kind]
    if isinstance(fact.row, Action):
        return is_claimed(fact.row.joint, fact.row.movement, rows)
    return is_named(content(), fact.value, rows)


def test_it_is_cited_only_for_what_it_says() -> None:
    cited = [fact for fact in content().index.facts.values() if fact.row and TABLE in fact.sources]
    assert [fact.id for fact in cited if not is_there(fact)] == []
    assert len(cited) > 100
