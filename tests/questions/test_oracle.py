"""The oracle finds what is planted: a judge that never objects proves nothing."""

from typing import Any

import pytest

from quizroom.questions.deck import items_of
from quizroom.questions.model import Family, Format
from quizroom.questions.print import item_as_json
from tests.questions.judging import complaints
from tests.questions.lists import REGIONAL, syllabus
from tests.questions.oracle import Oracle
from tests.questions.source_text import read_text

TEXT = read_text()
ORACLE = Oracle(TEXT, TEXT.courses[REGIONAL])


def an_item(family: Family, direction: str, subject: str, format_: Format = "one_best") -> dict[str, Any]:
    """The first item of the regional course with these marks."""
    wanted = (direction, subject, format_)
    items = items_of(syllabus(REGIONAL), family, 1)
    return item_as_json(next(one for one in items if (one.direction, one.subject, one.format) == wanted))


def with_wrong_option(item: dict[str, Any], concept: str) -> dict[str, Any]:
    """The item with its first wrong option replaced."""
    options = list(item["options"])
    place = next(place for place, one in enumerate(options) if one["letter"] not in item["key"])
    options[place] = {**options[place], "concept": concept, "text": concept}
    return {**item, "options": options}


@pytest.mark.parametrize(
    "family,direction,subject,planted",
    [
        ("origin", "muscle_to_site", "pectoralis_minor", "ribs.ribs_2_4"),  # a variant
        ("origin", "muscle_to_site", "pectoralis_minor", "ribs.ribs_1_8"),  # a whole of which it is a part
        ("nerve", "muscle_to_nerve", "brachialis", "radial_nerve"),  # a variant
        ("nerve", "muscle_to_nerve", "extensor_indicis", "radial_nerve"),  # the parent of its nerve
        ("nerve", "nerve_to_muscle", "radial_nerve", "extensor_indicis"),  # by a branch
        ("artery", "muscle_to_artery", "deltoid", "axillary_artery"),  # the parent of its artery
        ("action", "action_to_muscle", "elbow.flexion", "brachioradialis"),  # an assistant
        ("prime_mover", "action_to_muscle", "elbow.flexion", "brachioradialis"),  # an assistant again
        ("joint", "muscle_to_joint", "brachialis", "elbow"),
        ("look_alike", "landmark_to_bone", "scapula.coracoid_process", "scapula"),
        ("root", "segment_to_muscle", "C5", "biceps_brachii"),  # recorded, but not main
        ("root", "segment_to_muscle", "C5", "triceps_brachii"),  # one segment away
        ("compartment", "muscle_to_compartment", "brachialis", "arm_anterior"),
        ("name", "meaning_to_muscle", "brachialis", "brachialis"),
        ("antagonist", "muscle_to_opponent", "brachialis:elbow.flexion", "anconeus"),
        ("two_step", "action_and_nerve_to_muscle", "elbow.flexion:musculocutaneous_nerve", "brachialis"),
        ("lesion", "injury_to_lost", "radial_nerve_in_axilla", "extensor_indicis"),  # by a branch
        ("lesion", "injury_to_lost", "musculocutaneous_nerve_in_arm", "biceps_brachii"),
        ("lesion", "injury_to_spared", "radial_nerve_in_axilla", "deltoid"),
        ("lesion", "muscle_to_injury", "extensor_indicis", "radial_nerve_in_axilla"),
        ("lesion", "injury_to_movement", "radial_nerve_in_axilla", "elbow.extension"),
        ("lesion", "movement_to_injury", "wrist.extension", "radial_nerve_in_axilla"),
    ],
)
def test_a_wrong_option_that_some_reading_makes_true_is_found(
    family: Family, direction: str, subject: str, planted: str
) -> None:
    item = an_item(family, direction, subject)
    assert complaints(ORACLE, item) == []
    assert any("may be right" in one for one in complaints(ORACLE, with_wrong_option(item, planted)))


def test_a_key_that_no_reading_makes_true_is_found() -> None:
    item = an_item("nerve", "nerve_to_muscle", "suprascapular_nerve")
    other = next(option["letter"] for option in item["options"] if option["letter"] not in item["key"])
    found = complaints(ORACLE, {**item, "key": (other,)})
    assert any("is not sure" in one for one in found)
    assert any("may be right" in one for one in found)


def test_overlapping_options_are_found() -> None:
    item = an_item("nerve", "muscle_to_nerve", "deltoid")
    nerves = ["radial_nerve", "posterior_interosseous_nerve"]
    wrong = [one for one in item["options"] if one["letter"] not in item["key"]]
    for option, nerve in zip(wrong, nerves, strict=False):
        option["concept"] = option["text"] = nerve
    assert any("overlap" in one for one in complaints(ORACLE, item))


def test_a_set_that_leaves_out_a_member_is_found() -> None:
    item = an_item("set", "nerve_to_muscles", "musculocutaneous_nerve", "free_list")
    assert complaints(ORACLE, item) == []
    short = {**item, "accepted": item["accepted"][1:], "pick": item["pick"] - 1}
    assert len(complaints(ORACLE, short)) == 1


def test_too_few_options_and_doubled_texts_are_found() -> None:
    item = an_item("nerve", "muscle_to_nerve", "deltoid")
    assert any("options" in one for one in complaints(ORACLE, {**item, "options": item["options"][:2]}))
    item["options"][1]["text"] = item["options"][0]["text"]
    assert any("read alike" in one for one in complaints(ORACLE, item))


def an_odd_one_out() -> dict[str, Any]:
    items = items_of(syllabus(REGIONAL), "odd_one_out", 1)
    return item_as_json(next(item for item in items if item.direction == "by_nerve"))


def test_a_second_odd_one_out_is_found() -> None:
    """The diaphragm shares neither nerve, nor group, nor joint with anything in the limb."""
    item = an_odd_one_out()
    assert complaints(ORACLE, item) == []
    assert complaints(ORACLE, with_wrong_option(item, "diaphragm"))


def test_an_odd_one_out_among_muscles_that_share_something_else_is_found() -> None:
    item = an_odd_one_out()
    assert any("do not share" in one for one in complaints(ORACLE, {**item, "subject": "phrenic_nerve"}))


def test_a_key_that_is_not_the_odd_one_is_found() -> None:
    item = an_odd_one_out()
    other = next(option["letter"] for option in item["options"] if option["letter"] not in item["key"])
    assert any("is not odd by nerve" in one for one in complaints(ORACLE, {**item, "key": (other,)}))


def test_a_lesion_that_does_not_say_that_patients_vary_is_found() -> None:
    item = an_item("lesion", "injury_to_lost", "radial_nerve_in_axilla")
    bare = {**item, "why": {**item["why"], "text": "It is lost."}}
    assert complaints(ORACLE, bare) == [f"lesion: {item['stem']} -> no word on patients"]


def test_a_muscle_that_a_trunk_may_reach_by_one_segment_more_is_no_wrong_option() -> None:
    item = an_item("lesion", "injury_to_lost", "upper_trunk")
    assert complaints(ORACLE, item) == []
    reached = with_wrong_option(item, "brachioradialis")  # C5-C6 through the radial nerve
    assert any("may be right" in one for one in complaints(ORACLE, reached))
