"""Readings on which books and papers differ: each is recorded, so that it can never be a wrong option.

Who says what: common practice, no source; the dissection studies are named in the content itself.
"""

import pytest

from quizroom.knowledge.anatomy import nerve_ancestors
from tests.shipped import content


def statuses(muscle: str, kind: str, value: str) -> set[str]:
    """Statuses of all facts of the kind that hold the value, for the muscle or any part of it."""
    return {
        fact.status for fact in content().index.facts_with.get((kind, value), ()) if fact.muscle == muscle
    }


@pytest.mark.parametrize(
    "muscle, kind, value",
    [
        ("brachialis", "nerve", "radial_nerve"),
        ("triceps_brachii", "nerve", "axillary_nerve"),
        ("trapezius", "nerve", "branches_of_c3_and_c4"),
        ("trapezius", "action", "scapulothoracic.downward_rotation"),
        ("teres_major", "nerve", "thoracodorsal_nerve"),
        ("pectoralis_minor", "nerve", "lateral_pectoral_nerve"),
        ("coracobrachialis", "action", "glenohumeral.medial_rotation"),
        ("biceps_brachii", "action", "glenohumeral.abduction"),
        ("latissimus_dorsi", "origin", "scapula.inferior_angle"),
        ("teres_minor", "action", "glenohumeral.extension"),
        ("supraspinatus", "action", "glenohumeral.lateral_rotation"),
        ("subscapularis", "action", "glenohumeral.adduction"),
        ("flexor_digitorum_profundus", "nerve", "ulnar_nerve"),
        ("abductor_pollicis_longus", "action", "wrist.flexion"),
    ],
)
def test_a_contested_reading_is_recorded_beside_the_core(muscle: str, kind: str, value: str) -> None:
    assert {"variant", "minority"} & statuses(muscle, kind, value)


@pytest.mark.parametrize(
    "muscle, nerves",
    [
        (
            "extensor_carpi_radialis_brevis",
            {
                "deep_branch_of_radial_nerve",
                "superficial_branch_of_radial_nerve",
                "posterior_interosseous_nerve",
            },
        ),
        ("supinator", {"deep_branch_of_radial_nerve", "posterior_interosseous_nerve"}),
        ("levator_scapulae", {"branches_of_c3_and_c4", "dorsal_scapular_nerve"}),
    ],
)
def test_all_nerves_that_are_named_for_a_muscle_are_recorded(muscle: str, nerves: set[str]) -> None:
    assert nerves <= {supply.nerve for supply in content().muscles[muscle].nerves}


def test_what_is_told_of_the_supinator_holds_wherever_the_branch_is_renamed() -> None:
    assert "deep_branch_of_radial_nerve" in nerve_ancestors(content(), "posterior_interosseous_nerve")


@pytest.mark.parametrize(
    "topic, muscle", [("nerves", "brachialis"), ("nerves", "trapezius"), ("actions", "trapezius")]
)
def test_a_contest_is_told_to_the_student(topic: str, muscle: str) -> None:
    assert topic in {difference.about for difference in content().muscles[muscle].differ}
