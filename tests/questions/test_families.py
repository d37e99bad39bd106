"""The families as a whole: named in the guide, in both directions where a fact has two."""

from collections import Counter
from pathlib import Path

import pytest

from quizroom.questions.deck import items_of
from quizroom.questions.model import FAMILIES, Family
from tests.questions.lists import REGIONAL, all_items, placed_items, syllabus

GUIDE = (Path(__file__).resolve().parents[2] / "DEVELOPERS.md").read_text("utf-8")
BOTH_WAYS: dict[Family, set[str]] = {
    "origin": {"muscle_to_site", "site_to_muscle", "site_to_head"},
    "insertion": {"muscle_to_site", "site_to_muscle"},
    "action": {"muscle_to_movement", "muscle_to_action", "action_to_muscle"},
    "prime_mover": {"muscle_to_action", "action_to_muscle"},
    "joint": {"muscle_to_joint", "joint_to_muscle"},
    "nerve": {"muscle_to_nerve", "nerve_to_muscle"},
    "root": {"muscle_to_segment", "segment_to_muscle"},
    "compartment": {"muscle_to_compartment", "compartment_to_muscle"},
    "set": {"nerve_to_muscles", "site_to_muscles", "prime_to_muscles", "compartment_to_muscles"},
    "look_alike": {"landmark_to_bone", "meaning_to_movement", "nerve:muscle_to_nerve"},
    "odd_one_out": {"by_nerve", "by_compartment", "by_crossing", "by_action"},
    "antagonist": {"movement_to_opposite", "muscle_to_opponent"},
    "name": {"muscle_to_meaning", "meaning_to_muscle"},
    "lesion": {
        "injury_to_lost",
        "injury_to_spared",
        "injury_to_movement",
        "muscle_to_injury",
        "movement_to_injury",
    },
    "two_step": {"action_and_nerve_to_muscle"},
    "ordering": {"nerve_path", "artery_path", "insertions_along_limb", "way_of_muscle"},
    "matching": {
        "nerve:muscle_to_nerve",
        "origin:muscle_to_site",
        "insertion:muscle_to_site",
        "action:muscle_to_action",
        "artery:muscle_to_artery",
    },
}


@pytest.mark.parametrize("family", FAMILIES)
def test_every_family_is_explained_to_contributors(family: str) -> None:
    assert f"`{family}`" in GUIDE.partition("## Families")[2].partition("\n## ")[0]


@pytest.mark.parametrize("family", BOTH_WAYS)
def test_a_family_asks_in_all_its_directions(family: Family) -> None:
    assert BOTH_WAYS[family] <= {item.direction for item in items_of(syllabus(REGIONAL), family, 1)}


def test_every_family_makes_items() -> None:
    assert set(Counter(item.family for item in (*all_items(), *placed_items()))) == set(FAMILIES)


def test_an_odd_one_out_is_odd_by_what_the_course_examines() -> None:
    ways = {item.direction for item in items_of(syllabus("kinesiology"), "odd_one_out", 1)}
    assert "nerve" not in syllabus("kinesiology").course.families
    assert ways == {"by_crossing", "by_action"}
