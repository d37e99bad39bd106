"""The record of a muscle."""

import pytest

from quizroom.knowledge.compose import ANATOMY_VARIES, NOT_FOR_PRACTICE, record_of
from tests.knowledge.entries import act, at
from tests.knowledge.tiny import tiny, with_changed


def test_heads_come_first_and_what_they_share_after() -> None:
    heads = record_of(tiny(), "biceps_brachii").heads
    assert [head.name for head in heads] == ["long head", "short head", ""]
    assert [site.label for site in heads[0].origins] == ["supraglenoid tubercle of the scapula"]
    assert [site.bone for site in heads[2].insertions] == ["radius"]


def test_joints_run_proximal_to_distal_with_their_actions() -> None:
    joints = record_of(tiny(), "biceps_brachii").joints
    assert [row.joint for row in joints] == ["shoulder joint", "elbow joint", "radioulnar joint"]
    assert [action.verb for row in joints for action in row.actions] == ["does flexion", "does supination"]
    assert joints[2].actions[0].condition == "strongest with the elbow flexed"


def test_a_joint_that_one_head_crosses_names_the_head() -> None:
    origins = (at("scapula.coracoid_process", "long_head"), at("humerus.shaft", "short_head"))
    record = record_of(with_changed("muscles", "biceps_brachii", origins=origins), "biceps_brachii")
    assert [row.parts for row in record.joints] == [("long head",), (), ()]


def test_a_joint_acted_on_from_afar_is_shown_too() -> None:
    actions = (act("elbow", "flexion"), act("shoulder", "flexion", status="minority"))
    record = record_of(with_changed("muscles", "brachialis", actions=actions), "brachialis")
    assert [row.joint for row in record.joints] == ["shoulder joint", "elbow joint"]


def test_nerves_run_from_the_roots_of_this_muscle() -> None:
    nerve, variant = record_of(tiny(), "brachialis").nerves
    assert nerve.path == ("C5\N{EN DASH}C6", "upper trunk", "lateral cord", "musculocutaneous nerve")
    assert (nerve.roots, nerve.main) == (("C5", "C6"), ("C6",))
    assert (variant.path[0], variant.status) == ("C6", "variant")


def test_core_rows_come_before_variants() -> None:
    insertions = (at("ulna.tuberosity", status="variant"), at("ulna.coronoid_process"))
    record = record_of(with_changed("muscles", "brachialis", insertions=insertions), "brachialis")
    assert [site.status for site in record.heads[0].insertions] == ["core", "variant"]


def test_arteries_run_from_their_trunk() -> None:
    (artery,) = record_of(tiny(), "brachialis").arteries
    assert artery.path == ("axillary artery", "brachial artery")


def test_look_alikes_of_its_landmarks_are_told() -> None:
    (line,) = record_of(tiny(), "brachialis").lookalikes
    assert line.terms == ("coracoid process of the scapula", "coronoid process of the ulna")


def test_the_caution_for_practice_comes_with_a_clinical_note_only() -> None:
    assert record_of(tiny(), "biceps_brachii").cautions == (ANATOMY_VARIES, NOT_FOR_PRACTICE)
    assert record_of(tiny(), "brachialis").cautions == (ANATOMY_VARIES,)


def test_what_books_differ_on_and_the_sources_stand_in_the_record() -> None:
    record = record_of(tiny(), "brachialis")
    assert [line.text for line in record.differ] == ["Some add the radial nerve."]
    assert [source.id for source in record.sources] == ["common_practice"]


def test_an_unknown_muscle_has_no_record() -> None:
    with pytest.raises(KeyError):
        record_of(tiny(), "brachials")
