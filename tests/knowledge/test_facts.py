"""Facts and their ids."""

from quizroom.knowledge.facts import fact_id, facts_of, slug
from tests.knowledge.tiny import biceps, brachialis


def test_ids_name_muscle_kind_part_and_value() -> None:
    assert fact_id("biceps_brachii", "origin", "long_head", "scapula.supraglenoid_tubercle") == (
        "biceps_brachii/origin/long_head/scapula.supraglenoid_tubercle"
    )
    assert fact_id("biceps_brachii", "meaning", "", "") == "biceps_brachii/meaning/-/-"


def test_a_muscle_states_each_of_its_rows_once() -> None:
    ids = [fact.id for fact in facts_of(biceps())]
    assert ids == [
        "biceps_brachii/name/-/biceps_brachii",
        "biceps_brachii/name/-/biceps",
        "biceps_brachii/meaning/-/-",
        "biceps_brachii/compartment/-/arm_anterior",
        "biceps_brachii/origin/long_head/scapula.supraglenoid_tubercle",
        "biceps_brachii/origin/short_head/scapula.coracoid_process",
        "biceps_brachii/insertion/-/radius.tuberosity",
        "biceps_brachii/action/-/elbow.flexion",
        "biceps_brachii/action/-/radioulnar.supination",
        "biceps_brachii/nerve/-/musculocutaneous_nerve",
        "biceps_brachii/artery/-/brachial_artery",
    ]


def test_a_fact_keeps_the_status_and_key_of_its_row() -> None:
    variants = [(fact.value, fact.key) for fact in facts_of(brachialis()) if fact.status == "variant"]
    assert variants == [("radial_nerve", "nerves[1]")]


def test_a_slug_is_lower_case_words() -> None:
    assert slug("Lister's tubercle, No. 2") == "lister_s_tubercle_no_2"
