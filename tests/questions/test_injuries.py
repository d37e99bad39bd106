"""What an injury surely takes or leaves. Rows U1 to U18 as in standard texts (Moore, Snell), from memory."""

import pytest

from quizroom.questions.injuries import Injuries
from tests.questions.lists import REGIONAL, syllabus


def injuries() -> Injuries:
    return syllabus(REGIONAL).injuries


@pytest.mark.parametrize(
    "injury,lost",
    [
        ("upper_trunk", ("deltoid", "teres_minor", "supraspinatus", "infraspinatus", "biceps_brachii")),
        ("musculocutaneous_nerve_in_arm", ("coracobrachialis", "biceps_brachii", "brachialis")),
        ("radial_nerve_in_axilla", ("triceps_brachii", "brachioradialis", "extensor_indicis")),
        ("anterior_interosseous_nerve_in_forearm", ("flexor_pollicis_longus", "pronator_quadratus")),
    ],
)
def test_what_is_lost_in_the_table_is_lost_for_sure(injury: str, lost: tuple[str, ...]) -> None:
    assert [one for one in lost if not injuries().is_lost(injury, one)] == []
    assert not any(injuries().is_whole(injury, one) for one in lost)


@pytest.mark.parametrize(
    "injury,spared",
    [
        ("upper_trunk", ("serratus_anterior", "rhomboid_major", "rhomboid_minor", "levator_scapulae")),
        ("axillary_nerve_at_surgical_neck", ("supraspinatus", "infraspinatus")),
        ("musculocutaneous_nerve_in_arm", ("pronator_teres", "supinator", "brachioradialis")),
        ("posterior_interosseous_nerve_at_supinator", ("brachioradialis", "extensor_carpi_radialis_longus")),
    ],
)
def test_the_traps_of_the_table_are_spared_for_sure(injury: str, spared: tuple[str, ...]) -> None:
    assert [one for one in spared if not injuries().is_whole(injury, one)] == []


@pytest.mark.parametrize(
    "muscle", ["flexor_pollicis_longus", "pronator_quadratus", "flexor_digitorum_profundus"]
)
def test_where_books_give_a_segment_beyond_the_trunk_nothing_is_sure(muscle: str) -> None:
    """U2: C8 and T1, or C7 and C8 by muscle-testing charts."""
    assert not injuries().is_lost("lower_trunk", muscle)
    assert not injuries().is_whole("lower_trunk", muscle)


def test_a_root_may_be_cut_as_well() -> None:
    """Geniohyoid has C1 alone (Moore, from memory); what C5 reaches has C6 too."""
    assert injuries().is_lost("c1", "geniohyoid")
    assert injuries().tolls["c5"].lost == frozenset()
    assert injuries().is_whole("c5", "extensor_indicis")


@pytest.mark.parametrize("muscle", ["supinator", "extensor_carpi_radialis_brevis"])
def test_where_books_differ_on_a_level_nothing_is_sure(muscle: str) -> None:
    injury = "posterior_interosseous_nerve_at_supinator"
    assert not injuries().is_lost(injury, muscle)
    assert not injuries().is_whole(injury, muscle)


def test_a_variant_nerve_that_is_not_cut_keeps_a_muscle_from_being_lost_by_all_readings() -> None:
    assert injuries().is_lost("musculocutaneous_nerve_in_arm", "brachialis")
    assert not injuries().is_lost_by_all("musculocutaneous_nerve_in_arm", "brachialis")


@pytest.mark.parametrize(
    "injury,action,fails",
    [
        ("radial_nerve_in_axilla", "elbow.extension", True),
        ("radial_nerve_in_axilla", "wrist.extension", True),
        ("musculocutaneous_nerve_in_arm", "elbow.flexion", True),  # brachioradialis assists
        ("axillary_nerve_at_surgical_neck", "glenohumeral.abduction", False),  # supraspinatus is left
        ("radial_nerve_in_radial_groove", "elbow.extension", False),
    ],
)
def test_a_movement_fails_when_no_prime_mover_is_left(injury: str, action: str, fails: bool) -> None:  # noqa: FBT001 -- read from the table
    assert injuries().fails(injury, action) == fails


def test_a_movement_is_kept_only_if_nobody_who_does_it_is_touched() -> None:
    assert injuries().keeps("radial_nerve_in_axilla", "thumb_interphalangeal.flexion")
    assert not injuries().keeps("axillary_nerve_at_surgical_neck", "glenohumeral.lateral_rotation")
