"""Attachments and movers of the tiny knowledge base."""

from quizroom.knowledge.anatomy import (
    antagonist,
    attachments_at,
    attachments_on_bone,
    attachments_touching,
    movers,
    prime_movers,
    sites_overlap,
)
from tests.knowledge.entries import act, at
from tests.knowledge.tiny import tiny, with_changed


def test_movers_are_told_apart_from_prime_movers() -> None:
    catalogue = with_changed("muscles", "biceps_brachii", actions=(act("elbow", "flexion", "assistant"),))
    assert [fact.muscle for fact in movers(catalogue, "elbow", "flexion")] == ["biceps_brachii", "brachialis"]
    assert [fact.muscle for fact in prime_movers(catalogue, "elbow", "flexion")] == ["brachialis"]
    assert antagonist(catalogue, "flexion") == "extension"


def test_an_attachment_on_a_part_is_one_on_the_whole() -> None:
    assert [fact.muscle for fact in attachments_at(tiny(), "humerus.shaft")] == ["brachialis"]
    assert [fact.muscle for fact in attachments_at(tiny(), "ulna.tuberosity", ("variant",))] == []


def test_an_attachment_on_the_whole_may_be_one_on_the_part() -> None:
    catalogue = with_changed("muscles", "brachialis", origins=(at("humerus.shaft"),))
    assert attachments_at(catalogue, "humerus.anterior_surface") == ()
    touching = attachments_touching(catalogue, "humerus.anterior_surface")
    assert [fact.muscle for fact in touching] == ["brachialis"]


def test_attachments_are_found_by_bone() -> None:
    assert {fact.muscle for fact in attachments_on_bone(tiny(), "ulna")} == {"brachialis"}


def test_whole_and_part_overlap_and_neighbours_do_not() -> None:
    assert sites_overlap(tiny(), "humerus.shaft", "humerus.anterior_surface")
    assert sites_overlap(tiny(), "humerus.anterior_surface", "humerus.shaft")
    assert not sites_overlap(tiny(), "ulna.tuberosity", "ulna.coronoid_process")
