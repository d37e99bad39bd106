"""What every anatomist would check in the upper limb first: attachments, joints, prime movers.

All values here: common practice, no source; written from memory.
"""

import pytest

from quizroom.knowledge.anatomy import (
    attachments_at,
    attachments_on_bone,
    joints_crossed,
    parts_crossing,
    prime_movers,
)
from quizroom.knowledge.model import Status
from tests.shipped import content

CORE: tuple[Status, ...] = ("core",)


def test_brachialis_crosses_the_elbow_alone_and_is_its_prime_flexor() -> None:
    assert joints_crossed(content(), "brachialis") == ("elbow",)
    assert "brachialis" in {fact.muscle for fact in prime_movers(content(), "elbow", "flexion")}


def test_biceps_has_no_attachment_to_the_humerus() -> None:
    assert "biceps_brachii" not in {fact.muscle for fact in attachments_on_bone(content(), "humerus")}
    assert joints_crossed(content(), "biceps_brachii") == ("glenohumeral", "elbow", "radioulnar_joints")


def test_only_the_long_head_of_triceps_crosses_the_shoulder() -> None:
    assert parts_crossing(content(), "triceps_brachii", "glenohumeral") == ("long_head",)
    assert parts_crossing(content(), "triceps_brachii", "elbow") == (
        "long_head",
        "lateral_head",
        "medial_head",
    )


def test_coracobrachialis_crosses_the_shoulder_alone() -> None:
    assert joints_crossed(content(), "coracobrachialis") == ("glenohumeral",)


@pytest.mark.parametrize(
    "site, attached",
    [
        (
            "scapula.coracoid_process",
            {("pectoralis_minor", ""), ("coracobrachialis", ""), ("biceps_brachii", "short_head")},
        ),
        ("humerus.greater_tubercle", {("supraspinatus", ""), ("infraspinatus", ""), ("teres_minor", "")}),
        ("humerus.lesser_tubercle", {("subscapularis", "")}),
        ("scapula.supraglenoid_tubercle", {("biceps_brachii", "long_head")}),
        ("scapula.infraglenoid_tubercle", {("triceps_brachii", "long_head")}),
        ("humerus.deltoid_tuberosity", {("deltoid", "")}),
        ("radius.radial_tuberosity", {("biceps_brachii", "")}),
        ("ulna.ulnar_tuberosity", {("brachialis", "")}),
    ],
)
def test_a_landmark_holds_exactly_its_muscles(site: str, attached: set[tuple[str, str]]) -> None:
    assert {(fact.muscle, fact.part) for fact in attachments_at(content(), site, CORE)} == attached


@pytest.mark.parametrize(
    "site, muscles",
    [
        (
            "humerus.medial_epicondyle",
            {
                "pronator_teres",
                "flexor_carpi_radialis",
                "palmaris_longus",
                "flexor_carpi_ulnaris",
                "flexor_digitorum_superficialis",
            },
        ),
        (
            "humerus.lateral_epicondyle",
            {
                "extensor_carpi_radialis_brevis",
                "extensor_digitorum",
                "extensor_digiti_minimi",
                "extensor_carpi_ulnaris",
                "anconeus",
                "supinator",
            },
        ),
    ],
)
def test_the_common_tendons_hold_exactly_their_muscles(site: str, muscles: set[str]) -> None:
    assert {fact.muscle for fact in attachments_at(content(), site, CORE)} == muscles


@pytest.mark.parametrize(
    "joint, movement, muscles",
    [
        ("radioulnar_joints", "pronation", {"pronator_teres", "pronator_quadratus"}),
        ("radioulnar_joints", "supination", {"biceps_brachii", "supinator"}),
        ("elbow", "extension", {"triceps_brachii"}),
        ("glenohumeral", "abduction", {"deltoid", "supraspinatus"}),
        ("distal_interphalangeal_joints", "flexion", {"flexor_digitorum_profundus"}),
        ("thumb_interphalangeal", "flexion", {"flexor_pollicis_longus"}),
        ("thumb_interphalangeal", "extension", {"extensor_pollicis_longus"}),
        ("scapulothoracic", "protraction", {"serratus_anterior"}),
    ],
)
def test_a_movement_has_exactly_its_prime_movers(joint: str, movement: str, muscles: set[str]) -> None:
    assert {fact.muscle for fact in prime_movers(content(), joint, movement)} == muscles


def test_the_superficial_flexor_stops_at_the_middle_phalanges() -> None:
    assert "distal_interphalangeal_joints" not in joints_crossed(content(), "flexor_digitorum_superficialis")
    assert "distal_interphalangeal_joints" in joints_crossed(content(), "flexor_digitorum_profundus")


def test_brachioradialis_stops_short_of_the_wrist() -> None:
    assert joints_crossed(content(), "brachioradialis") == ("elbow", "radioulnar_joints")


def test_the_slice_has_at_least_forty_muscles() -> None:
    assert len(content().muscles) >= 40
