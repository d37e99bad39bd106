"""A review dealt by its blueprint: exactly so many rounds a cell, or the cell that cannot be filled."""

from collections import Counter
from dataclasses import replace
from itertools import islice
from random import Random
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from quizroom.questions.blueprint import Blueprint
from quizroom.questions.cells import COUNTED_TO, is_warm_up
from quizroom.questions.deck import ALL_FORMATS, LETTERED, CannotDeal, DealPlan, deal_from, swap
from quizroom.questions.grid import cell_name
from quizroom.questions.model import Family, Item
from quizroom.questions.review_rules import given_away
from tests.questions.grids import Place, counted, course_grids, dealt_by, grid, yields
from tests.questions.lists import COURSES, REGIONAL, catalogue, syllabus

WHOLE = "regional_gross_anatomy"


def dealt_or_refused(course: str, blueprint: Blueprint, **how: Any) -> tuple[Item, ...] | str:
    """The review, or the sentence that says why there is none."""
    try:
        return dealt_by(course, blueprint, **how)
    except CannotDeal as reason:
        return str(reason)


@settings(max_examples=40, deadline=None)
@given(course_grids(), st.integers(0, 1000), st.sampled_from([LETTERED, ALL_FORMATS]))
def test_the_dealt_set_matches_the_grid_exactly_or_a_cell_is_named(
    case: tuple[str, Blueprint], seed: int, formats: tuple[str, ...]
) -> None:
    course, blueprint = case
    wanted = Counter({(cell.region, cell.family): cell.rounds for cell in blueprint.cells})
    items = dealt_or_refused(course, blueprint, seed=seed, formats=formats)
    if isinstance(items, str):
        names = {cell_name(syllabus(course), *place): count for place, count in wanted.items()}
        named = [name for name, count in names.items() if items.startswith(f"{name}: {count} round")]
        assert len(named) == 1, items
        return
    assert counted(course, items) == wanted
    assert [item.warm_up for item in items] == sorted((item.warm_up for item in items), reverse=True)
    assert sum(item.warm_up for item in items) == blueprint.warm_up
    facts = Counter(fact for item in items for fact in item.facts)
    assert facts.most_common(1)[0][1] == 1


@pytest.mark.parametrize("course", COURSES)
def test_every_cell_alone_gives_what_the_grid_promises_and_no_more(course: str) -> None:
    for cell in yields(course):
        place: Place = (cell.region, cell.family)
        if cell.most:
            assert counted(course, dealt_by(course, grid({place: cell.most}))) == {place: cell.most}
        else:
            assert cell.reason
        if cell.most < COUNTED_TO:
            with pytest.raises(CannotDeal, match=rf"yields ({cell.most} there|none)"):
                dealt_by(course, grid({place: cell.most + 1}))


def test_where_muscles_are_enough_no_round_gives_a_later_one_away() -> None:
    """The whole body: a round of each of ten families in ten regions."""
    cells = [cell for cell in yields(WHOLE) if cell.most > 1]
    given = 0
    for seed in range(10):
        drawn = Random(seed).sample(cells, len(cells))  # noqa: S311 -- which cells are tried is no secret
        by_region = {cell.region: cell for cell in drawn}
        places: dict[Place, int] = {(cell.region, cell.family): 1 for cell in by_region.values()}
        given += len(given_away(dealt_by(WHOLE, grid(dict(islice(places.items(), 10))), seed=seed)))
    assert given == 0


def test_cells_that_rest_on_the_same_facts_make_room_for_each_other() -> None:
    """Actions led as prime mover are actions too: each fact can serve one of the two cells alone."""
    most = {(one.region, one.family): one.most for one in yields(REGIONAL)}
    actions, leads = most["arm", "action"], most["arm", "prime_mover"]
    shared = grid({("arm", "action"): actions - leads, ("arm", "prime_mover"): leads})
    assert len(dealt_by(REGIONAL, shared)) == actions
    with pytest.raises(CannotDeal, match="beside the other cells, which rest on the same facts"):
        dealt_by(REGIONAL, grid({("arm", "action"): actions, ("arm", "prime_mover"): leads}))


def test_the_same_seed_deals_the_same_items_and_another_seed_others() -> None:
    blueprint = grid({("forearm", "nerve"): 4, ("shoulder", "origin"): 4}, warm_up=2)
    assert dealt_by(REGIONAL, blueprint, seed=5) == dealt_by(REGIONAL, blueprint, seed=5)
    assert dealt_by(REGIONAL, blueprint, seed=5) != dealt_by(REGIONAL, blueprint, seed=6)


def test_warm_up_asks_about_landmarks_and_movement_words_alone() -> None:
    items = dealt_by(REGIONAL, grid({("forearm", "nerve"): 2}, warm_up=3))
    assert [is_warm_up(item) for item in items] == [True, True, True, False, False]
    assert all(item.family == "look_alike" for item in items[:3])


@pytest.mark.parametrize(
    "blueprint,problem",
    [
        (grid({("nowhere", "nerve"): 1}), 'no muscle in the region "nowhere"'),
        (grid({("forearm", "no such family"): 1}), "does not examine"),  # type: ignore[dict-item] # on purpose
        (grid({("forearm", "nerve"): -1}), "cannot be dealt"),
        (grid({}), "1 to 60 rounds; the blueprint asks for 0"),
        (grid({("forearm", "origin"): 61}), "1 to 60 rounds; the blueprint asks for 61"),
        (grid({("forearm", "nerve"): 1}, warm_up=4), "at most 3 rounds to warm up"),
        (Blueprint(cells=grid({("forearm", "nerve"): 1}).cells * 2), "comes twice"),
    ],
)
def test_a_blueprint_that_makes_no_sense_is_refused_in_a_sentence(blueprint: Blueprint, problem: str) -> None:
    with pytest.raises(CannotDeal, match=problem):
        dealt_by(REGIONAL, blueprint)


@pytest.mark.parametrize("position", [0, 1, 3, 5])
def test_a_swap_stays_in_its_cell(position: int) -> None:
    blueprint = grid({("forearm", "nerve"): 3, ("shoulder", "origin"): 3}, warm_up=1)
    items = dealt_by(REGIONAL, blueprint, formats=ALL_FORMATS)
    plan = DealPlan(families=(), rounds=0, seed=1, formats=ALL_FORMATS, blueprint=blueprint)
    other = swap(catalogue(), catalogue().courses[REGIONAL], plan, items, position, seed=9)
    assert {fact for item in items for fact in item.facts}.isdisjoint(other.facts)
    changed = (*items[:position], other, *items[position + 1 :])
    assert counted(REGIONAL, changed) == counted(REGIONAL, items)
    assert [item.warm_up for item in changed] == [item.warm_up for item in items]


def test_a_cell_that_is_used_up_swaps_in_nothing() -> None:
    place: tuple[str, Family] = ("arm", "nerve")
    most = next(one.most for one in yields(REGIONAL) if (one.region, one.family) == place)
    blueprint = grid({place: most})
    plan = DealPlan(families=(), rounds=0, seed=1, blueprint=blueprint)
    items = deal_from(syllabus(REGIONAL), plan)
    with pytest.raises(CannotDeal, match=r"^Arm, nerve: all .* already in the review\.$"):
        swap(catalogue(), catalogue().courses[REGIONAL], plan, items, 0, seed=2)


def test_a_third_is_typed_where_enough_can_be_asked_so_and_none_unasked() -> None:
    blueprint = grid({("forearm", "nerve"): 6, ("forearm", "insertion"): 6})
    typed = [item for item in dealt_by(REGIONAL, blueprint, formats=ALL_FORMATS) if item.format == "typed"]
    assert len(typed) == 4
    assert all(item.format in LETTERED for item in dealt_by(REGIONAL, blueprint))


def test_without_a_blueprint_nothing_is_said_to_warm_up() -> None:
    plan = DealPlan(families=("nerve", "look_alike"), rounds=10, seed=3)
    items = deal_from(syllabus(REGIONAL), plan)
    assert not any(item.warm_up for item in items)
    assert items == deal_from(syllabus(REGIONAL), replace(plan, blueprint=None))
