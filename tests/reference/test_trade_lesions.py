"""What complete lesions take away, derived from the nerve tree, against every row of the trade's table."""

from collections.abc import Iterator
from functools import cache

import pytest

from quizroom.knowledge.anatomy import Cut, Lesion, cut_at, lesion_of
from tests.reference.lesion_rows import MORE_LOST, ROWS
from tests.shipped import content


@cache
def lesion(place: str) -> Lesion:
    """The lesion at a level, or of a whole trunk."""
    cut = cut_at(content(), place) if place in content().levels else Cut(nerves=frozenset((place,)))
    return lesion_of(content(), cut)


def units(names: str) -> set[str]:
    """Muscles and parts in words; a muscle with parts means all of them, `@region` all of a region."""
    found = set()
    for name in _with_regions(names):
        muscle = content().muscles[name.partition("/")[0]]
        found |= {name} if "/" in name or not muscle.parts else {f"{name}/{part.id}" for part in muscle.parts}
    return found


def _with_regions(names: str) -> Iterator[str]:
    for name in names.split():
        if name.startswith("@"):
            yield from (one.id for one in content().muscles.values() if one.region == name[1:])
        else:
            yield name


@pytest.mark.parametrize("row", ROWS)
def test_what_is_lost_is_what_the_table_lists_and_what_a_reason_is_given_for(row: str) -> None:
    expected = units(ROWS[row].lost) | units(MORE_LOST.get(row, ""))
    assert set(lesion(ROWS[row].place).with_damage("lost")) == expected


@pytest.mark.parametrize("row", ROWS)
def test_what_the_table_calls_weak_is_weakened_unless_a_reason_is_given(row: str) -> None:
    weak = units(ROWS[row].weak) - units(MORE_LOST.get(row, ""))
    assert weak <= set(lesion(ROWS[row].place).with_damage("weakened"))


@pytest.mark.parametrize("row", MORE_LOST)
def test_a_reason_that_is_no_longer_needed_is_found(row: str) -> None:
    assert units(MORE_LOST[row]).isdisjoint(units(ROWS[row].lost))
    assert units(MORE_LOST[row]) <= set(lesion(ROWS[row].place).with_damage("lost"))


@pytest.mark.parametrize("row", ROWS)
def test_the_muscles_that_the_table_warns_of_are_spared(row: str) -> None:
    found = lesion(ROWS[row].place)
    assert units(ROWS[row].spared).isdisjoint((*found.with_damage("lost"), *found.with_damage("weakened")))


@pytest.mark.parametrize("row", [name for name, row in ROWS.items() if row.movements])
def test_a_movement_suffers_as_in_the_table(row: str) -> None:
    effects = {f"{one.joint}.{one.movement}": one.effect for one in lesion(ROWS[row].place).movements}
    expected = dict(one.split("=") for one in ROWS[row].movements.split())
    assert {one: effects.get(one, "spared").replace(" ", "_") for one in expected} == expected


@pytest.mark.parametrize(
    "distal,proximal",
    [
        ("recurrent_branch_of_median_nerve_in_thenar_eminence", "median_nerve_at_wrist"),  # U16, U15
        ("median_nerve_at_wrist", "median_nerve_at_elbow"),  # U15, U13
        ("anterior_interosseous_nerve_in_forearm", "median_nerve_at_elbow"),  # U14, U13
        ("posterior_interosseous_nerve_at_supinator", "radial_nerve_in_radial_groove"),  # U11, U10
        ("radial_nerve_in_radial_groove", "radial_nerve_in_axilla"),  # U10, U9
        ("deep_branch_of_ulnar_nerve_in_palm", "ulnar_nerve_at_wrist"),  # U19, U18
        ("ulnar_nerve_at_wrist", "ulnar_nerve_at_elbow"),  # U18, U17
        ("accessory_nerve_in_posterior_triangle", "accessory_nerve_at_jugular_foramen"),  # H4, H5
    ],
)
def test_a_distal_lesion_takes_no_more_than_a_proximal_one(distal: str, proximal: str) -> None:
    assert set(lesion(distal).with_damage("lost")) <= set(lesion(proximal).with_damage("lost"))


def test_the_fibular_nerve_is_lost_as_its_two_branches_together() -> None:
    branches = [lesion(f"{name}_fibular_nerve") for name in ("superficial", "deep")]
    lost = {one for branch in branches for one in branch.with_damage("lost")}
    assert lost == set(lesion("common_fibular_nerve_at_fibular_neck").with_damage("lost"))


def test_a_root_alone_weakens_what_has_other_roots_too() -> None:
    """C5: no muscle of the arm is lost, those of C5 and C6 are weak (Moore, from memory)."""
    found = lesion("c5")
    assert found.with_damage("lost") == ()
    assert units("deltoid supraspinatus biceps_brachii rhomboid_major") <= set(found.with_damage("weakened"))
