"""In which order a blueprint's items come: new muscles first, then look-alikes or compartments together."""

from itertools import groupby, pairwise

import pytest

from quizroom.questions.cells import region_of
from quizroom.questions.difficulty import predicted_difficulty
from quizroom.questions.families import asks_of
from quizroom.questions.model import Item
from quizroom.questions.sequence import are_siblings, compartment_of
from tests.questions.grids import Place, dealt_by, grid
from tests.questions.lists import REGIONAL, syllabus

FOREARM: dict[Place, int] = {("forearm", "nerve"): 5, ("forearm", "origin"): 5, ("shoulder", "origin"): 5}
SEEDS = range(6)


def siblings_together(items: tuple[Item, ...]) -> int:
    return sum(are_siblings(syllabus(REGIONAL), one, other) for one, other in pairwise(items))


def runs(names: list[str]) -> list[str]:
    return [name for name, _ in groupby(names)]


def test_look_alike_muscles_follow_each_other_more_often_when_they_are_mixed() -> None:
    seeds = range(12)  # fewer leave it to chance
    mixed = sum(siblings_together(dealt_by(REGIONAL, grid(FOREARM), seed=seed)) for seed in seeds)
    blocked = sum(
        siblings_together(dealt_by(REGIONAL, grid(FOREARM, interleave=False), seed=seed)) for seed in seeds
    )
    assert mixed > blocked


@pytest.mark.parametrize("seed", SEEDS)
def test_unmixed_one_compartment_follows_another_in_the_order_of_the_content(seed: int) -> None:
    items = dealt_by(REGIONAL, grid(FOREARM, interleave=False), seed=seed)
    compartments = runs([compartment_of(syllabus(REGIONAL), item) for item in items])
    assert len(compartments) == len(set(compartments))
    regions = runs([region_of(syllabus(REGIONAL), item) for item in items])
    assert regions == ["shoulder", "forearm"]


def test_mixed_a_compartment_hardly_ever_follows_itself_but_for_siblings() -> None:
    def blocked(interleave: bool) -> int:  # noqa: FBT001 - the one thing that differs
        reviews = [dealt_by(REGIONAL, grid(FOREARM, interleave=interleave), seed=seed) for seed in SEEDS]
        return sum(
            compartment_of(syllabus(REGIONAL), one) == compartment_of(syllabus(REGIONAL), other)
            and not are_siblings(syllabus(REGIONAL), one, other)
            for items in reviews
            for one, other in pairwise(items)
        )

    assert blocked(interleave=True) * 5 < blocked(interleave=False)


@pytest.mark.parametrize("seed", SEEDS)
def test_muscles_not_shown_yet_come_before_any_that_were(seed: int) -> None:
    shown: set[str] = set()
    repeats: list[bool] = []
    for item in dealt_by(REGIONAL, grid(FOREARM), seed=seed):
        repeats.append(not shown.isdisjoint(item.muscles))
        shown |= set(item.muscles)
    assert repeats == sorted(repeats)


@pytest.mark.parametrize("seed", SEEDS)
def test_no_exchange_within_a_cell_would_bring_in_another_muscle(seed: int) -> None:
    items = dealt_by(REGIONAL, grid(FOREARM), seed=seed)
    shown = {muscle for item in items for muscle in item.muscles}
    asked = {fact for item in items for fact in item.facts}
    for place in FOREARM:
        repeated = [item for item in items if (region_of(syllabus(REGIONAL), item), item.family) == place]
        repeated = [item for item in repeated if sum(item.muscles[0] in one.muscles for one in items) > 1]
        could = {
            ask.muscles[0]
            for ask in asks_of(syllabus(REGIONAL), place[1])
            if region_of(syllabus(REGIONAL), ask) == place[0] and asked.isdisjoint(ask.facts)
        }
        assert not repeated or could <= shown


def test_the_aim_shifts_the_predicted_difficulty() -> None:
    def mean(aim: str) -> float:
        blueprint = grid(FOREARM, aim=aim)  # type: ignore[arg-type] # one of the three
        items = [item for seed in SEEDS for item in dealt_by(REGIONAL, blueprint, seed=seed)]
        return sum(predicted_difficulty(syllabus(REGIONAL), item) for item in items) / len(items)

    assert mean("easy") < mean("mixed") < mean("hard")


def test_every_dealt_item_carries_its_predicted_difficulty() -> None:
    for item in dealt_by(REGIONAL, grid(FOREARM)):
        assert item.difficulty == predicted_difficulty(syllabus(REGIONAL), item)
        assert 0 <= item.difficulty <= 1
