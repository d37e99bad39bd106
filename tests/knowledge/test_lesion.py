"""What a nerve's lesion takes away, derived from the tree, against the lesion table of the trade.

Rows U1 ... U17 stand as in standard texts (Moore, Snell, Aids to the Examination of the PNS), from memory.
"""

from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from quizroom.knowledge.anatomy.lesion import Cut, Effect, Lesion, cut_at, lesion_of
from quizroom.knowledge.anatomy.movers import movers
from tests.shipped import content

EXTENSORS = {
    "extensor_digitorum",
    "extensor_digiti_minimi",
    "extensor_indicis",
    "extensor_pollicis_longus",
    "extensor_pollicis_brevis",
    "abductor_pollicis_longus",
    "extensor_carpi_ulnaris",
}
LOST = {
    "axillary_nerve_at_surgical_neck": {"deltoid", "teres_minor"},
    "musculocutaneous_nerve_in_arm": {"coracobrachialis", "biceps_brachii", "brachialis"},
    "long_thoracic_nerve_on_chest_wall": {"serratus_anterior"},
    "thoracodorsal_nerve_in_axilla": {"latissimus_dorsi"},
    "suprascapular_nerve_at_suprascapular_notch": {"supraspinatus", "infraspinatus"},
    "suprascapular_nerve_at_spinoglenoid_notch": {"infraspinatus"},
    "posterior_interosseous_nerve_at_supinator": EXTENSORS,
    "superficial_branch_of_radial_nerve_at_wrist": set(),
}
EFFECTS: list[tuple[str, str, Effect]] = [
    ("axillary_nerve_at_surgical_neck", "glenohumeral.abduction", "weakened"),
    ("musculocutaneous_nerve_in_arm", "elbow.flexion", "severely weakened"),
    ("radial_nerve_in_axilla", "elbow.extension", "lost"),
    ("radial_nerve_in_axilla", "wrist.extension", "lost"),
    ("radial_nerve_in_axilla", "metacarpophalangeal_joints.extension", "lost"),
    ("radial_nerve_in_radial_groove", "elbow.extension", "weakened"),
    ("posterior_interosseous_nerve_at_supinator", "wrist.extension", "weakened"),
    ("median_nerve_at_elbow", "radioulnar_joints.pronation", "severely weakened"),
    ("anterior_interosseous_nerve_in_forearm", "thumb_interphalangeal.flexion", "lost"),
]


CATALOGUE = content()
NERVES = sorted(CATALOGUE.nerves)


def muscles(units: tuple[str, ...]) -> set[str]:
    return {one.partition("/")[0] for one in units}


def effect(lesion: Lesion, movement: str) -> str:
    found = {f"{one.joint}.{one.movement}": one.effect for one in lesion.movements}
    return found.get(movement, "spared")


@pytest.mark.parametrize("level", LOST)
def test_the_muscles_lost_are_those_of_the_table(level: str) -> None:
    assert muscles(lesion_of(CATALOGUE, cut_at(CATALOGUE, level)).with_damage("lost")) == LOST[level]


@pytest.mark.parametrize("level,movement,expected", EFFECTS)
def test_a_movement_suffers_as_in_the_table(level: str, movement: str, expected: str) -> None:
    assert effect(lesion_of(CATALOGUE, cut_at(CATALOGUE, level)), movement) == expected


def test_radial_in_the_groove_spares_the_long_head_and_biceps_still_supinates() -> None:
    lesion = lesion_of(CATALOGUE, cut_at(CATALOGUE, "radial_nerve_in_radial_groove"))
    assert "triceps_brachii/long_head" not in lesion.with_damage("lost")
    assert effect(lesion, "radioulnar_joints.supination") == "weakened"


def test_the_upper_trunk_spares_what_arises_from_the_roots_and_takes_the_classic_picture() -> None:
    lesion = lesion_of(CATALOGUE, Cut(nerves=frozenset(("upper_trunk",))))
    lost = muscles(lesion.with_damage("lost"))
    assert {
        "supraspinatus",
        "infraspinatus",
        "deltoid",
        "teres_minor",
        "biceps_brachii",
        "brachialis",
    } <= lost
    touched = lost | muscles(lesion.with_damage("weakened"))
    assert not {"serratus_anterior", "rhomboid_major", "rhomboid_minor", "levator_scapulae"} & touched
    assert effect(lesion, "glenohumeral.lateral_rotation") == "lost"


@settings(max_examples=30)  # each looks through the whole body twice
@given(st.frozensets(st.sampled_from(NERVES), max_size=3), st.sampled_from(NERVES))
def test_cutting_more_never_gives_anything_back(cut: frozenset[str], more: str) -> None:
    less = set(lesion_of(CATALOGUE, Cut(nerves=cut)).with_damage("lost"))
    assert less <= set(lesion_of(CATALOGUE, Cut(nerves=cut | {more})).with_damage("lost"))


@settings(max_examples=30)  # likewise
@given(st.frozensets(st.sampled_from(NERVES), min_size=1, max_size=3))
def test_no_movement_is_lost_while_a_mover_is_whole(cut: frozenset[str]) -> None:
    lesion = lesion_of(CATALOGUE, Cut(nerves=cut))
    touched = {(one.muscle, one.part) for one in lesion.muscles}
    for loss in lesion.movements:
        whole = [
            fact
            for fact in movers(CATALOGUE, loss.joint, loss.movement, ("core",))
            if not any(muscle == fact.muscle for muscle, _ in touched)
        ]
        assert loss.effect != "lost" or not whole


def test_a_distal_lesion_loses_no_more_than_a_proximal_one_of_the_same_nerve() -> None:
    levels = sorted(CATALOGUE.levels.values(), key=lambda one: (one.nerve, one.order))
    pairs = [(near, far) for near, far in pairwise(levels) if near.nerve == far.nerve]
    assert pairs
    for near, far in pairs:
        distal = set(lesion_of(CATALOGUE, cut_at(CATALOGUE, far.id)).with_damage("lost"))
        assert distal <= set(lesion_of(CATALOGUE, cut_at(CATALOGUE, near.id)).with_damage("lost"))


def test_branches_lose_no_more_than_the_nerve_they_come_from() -> None:
    median = lesion_of(CATALOGUE, cut_at(CATALOGUE, "median_nerve_at_elbow")).with_damage("lost")
    anterior = lesion_of(CATALOGUE, cut_at(CATALOGUE, "anterior_interosseous_nerve_in_forearm"))
    assert set(anterior.with_damage("lost")) <= set(median)
