"""Joints crossed in the tiny knowledge base."""

from quizroom.knowledge.anatomy import (
    joints_crossed,
    joints_possibly_crossed,
    joints_recorded,
    parts_crossing,
)
from quizroom.knowledge.model import Part
from tests.knowledge.entries import at, joint
from tests.knowledge.tiny import biceps, tables, tiny, with_changed


def test_the_joints_between_origin_and_insertion_are_crossed() -> None:
    assert joints_crossed(tiny(), "brachialis") == ("elbow",)
    assert joints_crossed(tiny(), "biceps_brachii") == ("shoulder", "elbow", "radioulnar")
    assert joints_crossed(tiny(), "biceps_brachii", "long_head") == ("shoulder", "elbow", "radioulnar")


def test_each_part_crosses_by_its_own_attachments_and_those_of_the_whole() -> None:
    origins = (at("scapula.coracoid_process", "long_head"), at("humerus.shaft", "short_head"))
    catalogue = with_changed("muscles", "biceps_brachii", origins=origins)
    assert joints_crossed(catalogue, "biceps_brachii", "short_head") == ("elbow", "radioulnar")
    assert parts_crossing(catalogue, "biceps_brachii", "shoulder") == ("long_head",)
    assert joints_crossed(catalogue, "biceps_brachii") == ("shoulder", "elbow", "radioulnar")


def test_a_variant_attachment_crosses_only_by_record() -> None:
    origins = (at("humerus.shaft"), at("scapula.coracoid_process", status="variant"))
    catalogue = with_changed("muscles", "brachialis", origins=origins)
    assert joints_crossed(catalogue, "brachialis") == ("elbow",)
    assert joints_recorded(catalogue, "brachialis") == ("shoulder", "elbow")
    assert joints_possibly_crossed(catalogue, "brachialis") == ("shoulder", "elbow")


def test_a_ring_of_bones_makes_other_joints_possible() -> None:
    ring = [
        *tables()["joints"],
        joint("humeroradial", (("humerus", "radius"),), ("flexion", "extension"), 9),
    ]
    catalogue = tiny(joints=ring)
    assert joints_crossed(catalogue, "brachialis") == ("elbow",)
    assert joints_possibly_crossed(catalogue, "brachialis") == ("elbow", "radioulnar", "humeroradial")


def test_a_muscle_with_a_part_that_attaches_nowhere_crosses_nothing_by_it() -> None:
    parts = (*biceps().parts, Part(id="third", name="third head"))
    origins = biceps().origins
    catalogue = with_changed("muscles", "biceps_brachii", parts=parts, origins=origins)
    assert joints_crossed(catalogue, "biceps_brachii", "third") == ()
