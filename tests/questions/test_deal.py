"""A dealt review: spread over muscles and families, no fact twice, nothing given away, the same again."""

from collections import Counter
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from quizroom.questions.deck import ALL_FORMATS, LETTERED, CannotDeal, DealPlan, deal, deal_from
from quizroom.questions.model import FAMILIES, Family, Item
from tests.questions.lists import COURSES, REGIONAL, catalogue, examined, syllabus


def dealt(course: str = REGIONAL, rounds: int = 20, seed: int = 1, **plan: object) -> tuple[Item, ...]:
    """A review of a shipped course list, of all its families unless said otherwise."""
    families = plan.pop("families", examined(course))
    full = DealPlan(families=families, rounds=rounds, seed=seed, **plan)  # type: ignore[arg-type] # as given
    return deal_from(syllabus(course), full)


@settings(max_examples=25, deadline=None)
@given(st.sampled_from(COURSES), st.integers(1, 30), st.integers(), st.sampled_from([LETTERED, ALL_FORMATS]))
def test_no_fact_is_asked_twice_and_every_id_is_its_own(
    course: str, rounds: int, seed: int, formats: tuple[str, ...]
) -> None:
    items = dealt(course, rounds, seed, formats=formats)
    facts = Counter(fact for item in items for fact in item.facts)
    assert len(items) == len({item.id for item in items}) == rounds
    assert facts.most_common(1)[0][1] == 1
    assert {item.format for item in items} <= set(formats)


def test_the_same_plan_deals_the_same_items_and_another_seed_others() -> None:
    assert dealt(seed=5) == dealt(seed=5)
    assert [item.stem for item in dealt(seed=5)] != [item.stem for item in dealt(seed=6)]


@settings(max_examples=20, deadline=None)
@given(st.sets(st.sampled_from(FAMILIES), min_size=1), st.integers(0, 1000))
def test_families_take_turns(families: set[Family], seed: int) -> None:
    chosen = tuple(family for family in FAMILIES if family in families)
    counts = Counter(item.family for item in dealt(rounds=10, seed=seed, families=chosen))
    assert set(counts) <= families
    assert max(counts.values()) - min(counts[family] for family in families) <= 1


@settings(max_examples=20, deadline=None)
@given(st.integers(0, 10_000))
def test_no_record_shown_holds_the_key_of_a_later_round_while_muscles_are_left(seed: int) -> None:
    shown: set[str] = set()
    for item in dealt(rounds=15, seed=seed):
        assert shown.isdisjoint(item.muscles)
        shown |= {record.muscle for record in item.records}


@settings(max_examples=20, deadline=None)
@given(st.integers(0, 10_000))
def test_no_reason_shown_tells_the_fact_of_a_later_round_while_others_are_left(seed: int) -> None:
    told: set[str] = set()
    for item in dealt(rounds=10, seed=seed):
        assert told.isdisjoint(item.facts)
        told |= {fact for option in item.options for fact in option.reason.facts}


def test_all_muscles_come_before_any_comes_twice() -> None:
    items = dealt("arm_and_forearm", rounds=30, families=("nerve", "origin"), seed=3)
    muscles = [item.muscles[0] for item in items]
    listed = len(catalogue().courses["arm_and_forearm"].muscles)
    assert len(set(muscles[:listed])) >= listed - 1  # one may have no fair question left in its turn


def test_what_cannot_be_dealt_is_said_in_a_sentence() -> None:
    with pytest.raises(CannotDeal, match=r"yields \d+ questions .* 100000 were asked for\. Choose fewer"):
        dealt(rounds=100_000)
    with pytest.raises(CannotDeal, match="does not examine"):
        dealt("intro_upper_limb", families=("artery",))
    with pytest.raises(CannotDeal, match="at least one round"):
        dealt(rounds=0)


def test_typed_rounds_come_only_if_they_are_asked_for() -> None:
    assert {item.format for item in dealt(rounds=60)} == set(LETTERED)
    assert {item.format for item in dealt(rounds=20, formats=("typed", "free_list"))} <= {
        "typed",
        "free_list",
    }
    typed = [item for item in dealt(rounds=60, formats=ALL_FORMATS) if item.format == "typed"]
    assert typed
    assert all(not item.options and not item.key and item.accepted for item in typed)


def test_a_muscle_that_the_catalogue_does_not_know_is_passed_over() -> None:
    course = catalogue().courses["arm_and_forearm"]
    wider = replace(course, muscles=("no_such_muscle", *course.muscles))
    plan = DealPlan(families=("nerve",), rounds=10, seed=1)
    assert "no_such_muscle" not in {
        muscle for item in deal(catalogue(), wider, plan) for muscle in item.muscles
    }
