"""A mock practical: one prompt a station, typed as far as it can be."""

import pytest

from quizroom.questions.deck import DealPlan, deal_from
from quizroom.questions.mock_practical import deal_stations
from quizroom.questions.model import FAMILIES, Item
from quizroom.questions.syllabus import Syllabus, syllabus_of
from tests.service.courses import knowledge


def syllabus(course: str) -> Syllabus:
    return syllabus_of(knowledge(), knowledge().courses[course])


def stations(
    course: str, *, count: int = 20, typed: bool = True, regions: tuple[str, ...] = (), seed: int = 1
) -> tuple[Item, ...]:
    return deal_stations(
        syllabus(course), families=FAMILIES, regions=regions, stations=count, typed=typed, seed=seed
    )


def test_every_station_is_typed_where_there_is_enough_to_name() -> None:
    assert {item.format for item in stations("upper_limb_regional")} == {"typed"}


def test_what_cannot_be_typed_comes_with_options() -> None:
    assert {item.format for item in stations("intro_ap")} == {"one_best"}


def test_typing_can_be_declined() -> None:
    assert {item.format for item in stations("upper_limb_regional", typed=False)} == {"one_best"}


@pytest.mark.parametrize("course", sorted(knowledge().courses))
def test_no_fact_is_asked_twice(course: str) -> None:
    items = stations(course, count=15)
    facts = [fact for item in items for fact in set(item.facts)]
    assert len(items) == 15
    assert len(facts) == len(set(facts))


def test_there_are_no_more_stations_than_facts() -> None:
    assert 0 < len(stations("intro_upper_limb", count=10_000)) < 10_000


def test_stations_can_be_kept_to_a_region() -> None:
    course = "kinesiology"
    muscles = knowledge().muscles
    region = muscles[syllabus(course).muscles[0]].region
    for items in (
        stations(course, regions=(region,), count=8),
        deal_from(
            syllabus(course),
            DealPlan(families=("origin", "insertion"), rounds=5, seed=1, regions=(region,)),
        ),
    ):
        assert {muscles[item.muscles[0]].region for item in items} == {region}


def test_the_same_seed_sets_up_the_same_stations() -> None:
    three = stations("kinesiology", seed=3)
    assert three == stations("kinesiology", seed=3)
    assert three != stations("kinesiology", seed=4)
