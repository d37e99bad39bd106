"""What every anatomist would check in the upper limb first: which nerve goes where.

All values here: common practice, no source; written from memory.
"""

import pytest

from quizroom.knowledge.anatomy import muscles_of_nerve, nerve_path, supplies_of_nerve
from tests.shipped import content


@pytest.mark.parametrize(
    "nerve, muscles",
    [
        ("musculocutaneous_nerve", {"coracobrachialis", "biceps_brachii", "brachialis"}),
        ("axillary_nerve", {"deltoid", "teres_minor"}),
        ("suprascapular_nerve", {"supraspinatus", "infraspinatus"}),
        ("long_thoracic_nerve", {"serratus_anterior"}),
        ("thoracodorsal_nerve", {"latissimus_dorsi"}),
        ("lower_subscapular_nerve", {"subscapularis", "teres_major"}),
        ("upper_subscapular_nerve", {"subscapularis"}),
        ("nerve_to_subclavius", {"subclavius"}),
        ("accessory_nerve", {"sternocleidomastoid", "trapezius"}),
        (
            "anterior_interosseous_nerve",
            {"flexor_pollicis_longus", "flexor_digitorum_profundus", "pronator_quadratus"},
        ),
    ],
)
def test_a_nerve_supplies_exactly_its_muscles(nerve: str, muscles: set[str]) -> None:
    assert set(muscles_of_nerve(content(), nerve)) == muscles


def test_the_ulnar_nerve_has_one_and_a_half_muscles_in_the_forearm() -> None:
    forearm = [
        fact for fact in supplies_of_nerve(content(), "ulnar_nerve") if region(fact.muscle) == "forearm"
    ]
    assert {(fact.muscle, fact.part) for fact in forearm} == {
        ("flexor_carpi_ulnaris", ""),
        ("flexor_digitorum_profundus", "medial_half"),
    }


def test_the_median_nerve_has_all_else_in_front_of_the_forearm() -> None:
    front = {muscle.id for muscle in content().muscles.values() if muscle.compartment == "forearm_anterior"}
    median = muscles_of_nerve(content(), "median_nerve")
    assert {muscle for muscle in median if region(muscle) == "forearm"} == front - {"flexor_carpi_ulnaris"}


def test_the_median_nerve_has_no_muscle_in_the_arm() -> None:
    assert {region(muscle) for muscle in muscles_of_nerve(content(), "median_nerve")} == {"forearm", "hand"}


def test_the_radial_nerve_has_all_muscles_behind_arm_and_forearm() -> None:
    behind = {
        muscle.id
        for muscle in content().muscles.values()
        if muscle.compartment in ("arm_posterior", "forearm_posterior")
    }
    assert set(muscles_of_nerve(content(), "radial_nerve")) == behind | {"brachioradialis"}


def test_a_cut_of_the_posterior_interosseous_nerve_spares_the_radial_wrist_extensors() -> None:
    lost = set(muscles_of_nerve(content(), "posterior_interosseous_nerve"))
    assert {
        "extensor_carpi_ulnaris",
        "extensor_digitorum",
        "extensor_digiti_minimi",
        "abductor_pollicis_longus",
        "extensor_pollicis_longus",
        "extensor_pollicis_brevis",
        "extensor_indicis",
    } <= lost
    assert not lost & {"brachioradialis", "extensor_carpi_radialis_longus"}


@pytest.mark.parametrize(
    "branch, nerve",
    [
        ("anterior_interosseous_nerve", "median_nerve"),
        ("posterior_interosseous_nerve", "deep_branch_of_radial_nerve"),
        ("deep_branch_of_radial_nerve", "radial_nerve"),
        ("radial_nerve", "posterior_cord"),
        ("musculocutaneous_nerve", "lateral_cord"),
    ],
)
def test_a_branch_reaches_no_muscle_that_its_nerve_does_not(branch: str, nerve: str) -> None:
    assert set(muscles_of_nerve(content(), branch)) < set(muscles_of_nerve(content(), nerve))


@pytest.mark.parametrize("nerve", ["long_thoracic_nerve", "dorsal_scapular_nerve"])
def test_nerves_from_the_roots_pass_no_trunk(nerve: str) -> None:
    assert [step.kind for step in nerve_path(content(), nerve)] == ["root", "nerve"]


def region(muscle: str) -> str:
    return content().muscles[muscle].region
