"""Facts and their ids."""

import pytest

from quizroom.knowledge.facts import fact_id, facts_of, slug, split_fact_id
from quizroom.knowledge.wording import fact_text
from tests.knowledge.tiny import biceps, brachialis, tiny


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


def test_ids_can_be_split_again() -> None:
    for fact in facts_of(biceps()):
        assert split_fact_id(fact.id) == (fact.muscle, fact.kind, fact.part, fact.value)


@pytest.mark.parametrize("text", ["", "brachialis", "a/b/c/d", "a/origin/-", "a/origin//x", "a/origin/-/x/y"])
def test_what_is_no_fact_id_is_not_split(text: str) -> None:
    assert split_fact_id(text) is None


def test_a_slug_is_lower_case_words() -> None:
    assert slug("Lister's tubercle, No. 2") == "lister_s_tubercle_no_2"


def test_facts_read_as_one_line() -> None:
    catalogue = tiny()
    texts = {fact.id: fact_text(catalogue, fact) for fact in catalogue.index.facts.values()}
    assert texts["biceps_brachii/origin/long_head/scapula.supraglenoid_tubercle"] == (
        "long head of biceps brachii: origin: supraglenoid tubercle of the scapula"
    )
    assert texts["biceps_brachii/nerve/-/musculocutaneous_nerve"].endswith(
        "nerve: musculocutaneous nerve (C5\N{EN DASH}C6)"
    )
    assert texts["brachialis/action/-/elbow.flexion"] == "brachialis: action: flexion at the elbow joint"
    assert texts["brachialis/origin/-/humerus.anterior_surface"].endswith("(distal half)")
    assert texts["biceps_brachii/name/-/biceps"] == "biceps brachii: name: biceps"
    assert texts["brachialis/compartment/-/arm_anterior"].endswith("anterior compartment")
