"""Fair for any course list: random muscles, separate parts, words and house rules, judged by the oracle."""

from dataclasses import asdict
from typing import Literal

from hypothesis import given, settings
from hypothesis import strategies as st

from quizroom.knowledge.model import Course, HouseRule
from quizroom.questions.deck import all_items, items_of
from quizroom.questions.model import FAMILIES, Family
from quizroom.questions.print import item_as_json
from quizroom.questions.syllabus import syllabus_of
from tests.questions.judging import complaints
from tests.questions.lists import REGIONAL, catalogue
from tests.questions.oracle import Oracle
from tests.questions.source_text import read_text

TEXT = read_text()
MUSCLES = sorted(TEXT.muscles)
FACTS = sorted(row.fact for rows in TEXT.rows.values() for row in rows)
RULINGS: tuple[Literal["key", "accept", "bar"], ...] = ("key", "accept", "bar")
RULES = st.builds(HouseRule, fact=st.sampled_from(FACTS), ruling=st.sampled_from(RULINGS))


@st.composite
def courses(draw: st.DrawFn) -> Course:
    """A course list such as a teacher might write."""
    muscles = draw(st.lists(st.sampled_from(MUSCLES), min_size=1, max_size=15, unique=True))
    return Course(
        id="drawn",
        title="Drawn",
        muscles=tuple(muscles),
        families=FAMILIES,
        separate_parts=tuple(draw(st.lists(st.sampled_from(muscles), max_size=4, unique=True))),
        attachment_words=draw(st.sampled_from(["origin and insertion", "proximal and distal"])),
        house_rules=tuple(draw(st.lists(RULES, max_size=6, unique_by=lambda rule: rule.fact))),
    )


@settings(max_examples=40, deadline=None)
@given(courses(), st.sampled_from(FAMILIES), st.integers(0, 1000))
def test_every_item_of_any_list_is_fair(course: Course, family: Family, seed: int) -> None:
    oracle = Oracle(TEXT, asdict(course))
    for item in items_of(syllabus_of(catalogue(), course), family, seed):
        assert complaints(oracle, item_as_json(item)) == []


def test_a_house_rule_decides_what_is_asked_and_is_never_called_wrong() -> None:
    fact = "brachialis/nerve/-/radial_nerve"
    base = catalogue().courses[REGIONAL]
    asked = {}
    for ruling in RULINGS:
        rules = (HouseRule(fact=fact, ruling=ruling),)
        course = Course(id="c", title="C", muscles=base.muscles, families=FAMILIES, house_rules=rules)
        items = list(all_items(catalogue(), course, "nerve", 1))
        asked[ruling] = [item for item in items if fact in item.facts]
        of_brachialis = [item for item in items if item.subject == "brachialis" and item.options]
        wrong = {
            option.concept for item in of_brachialis for option in item.options if option.source != "key"
        }
        assert of_brachialis
        assert "radial_nerve" not in wrong
    assert asked["key"]
    assert not asked["accept"]
    assert not asked["bar"]


def test_preferred_terms_are_shown() -> None:
    base = catalogue().courses[REGIONAL]
    preferred = (("scapula.coracoid_process", "coracoid process (scapula)"),)
    course = Course(id="c", title="C", muscles=base.muscles, families=FAMILIES, preferred=preferred)
    stems = [item.stem for item in all_items(catalogue(), course, "insertion", 1)]
    assert "Which of these muscles inserts on the coracoid process (scapula)?" in stems
