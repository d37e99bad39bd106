"""Prime movers that every course asks for, outside the upper limb, and joints that surprise.

All values here: common practice, no source; written from memory.
"""

import pytest

from quizroom.knowledge.anatomy import joints_crossed, movers, prime_movers
from tests.shipped import content

PRIME_MOVERS = {
    "hip.flexion": "iliacus psoas_major",
    "hip.abduction": "gluteus_medius gluteus_minimus",
    "knee.extension": "rectus_femoris vastus_intermedius vastus_lateralis vastus_medialis",
    "knee.flexion": "biceps_femoris semimembranosus semitendinosus",
    "ankle.dorsiflexion": "tibialis_anterior",
    "ankle.plantar_flexion": "gastrocnemius soleus",
    "subtalar.inversion": "tibialis_anterior tibialis_posterior",
    "subtalar.eversion": "fibularis_brevis fibularis_longus",
    "temporomandibular_joint.elevation": "masseter medial_pterygoid temporalis",
    "temporomandibular_joint.protrusion": "lateral_pterygoid",
    "temporomandibular_joint.retrusion": "temporalis",
    "palpebral_fissure.closure": "orbicularis_oculi",
    "upper_eyelid_over_eyeball.elevation": "levator_palpebrae_superioris",
    "oral_fissure.closure": "orbicularis_oris",
    "cheek_against_teeth.compression": "buccinator",
    "eyeball_in_orbit.abduction": "lateral_rectus",
    "eyeball_in_orbit.adduction": "medial_rectus",
    "eyeball_in_orbit.intorsion": "superior_oblique",
    "eyeball_in_orbit.extorsion": "inferior_oblique",
    "tongue_in_mouth.protrusion": "genioglossus",
    "vocal_folds.abduction": "posterior_cricoarytenoid",
    "vocal_folds.tension": "cricothyroid",
    "dome_of_diaphragm.depression": "diaphragm",
    "atlanto_axial_joints.rotation_opposite_side": "sternocleidomastoid",
    "lumbar_intervertebral_joints.rotation_opposite_side": "external_oblique",
    "lumbar_intervertebral_joints.rotation_same_side": "internal_oblique",
}
CROSSED = {
    "rectus_femoris": "hip knee patellofemoral_joint",
    "vastus_lateralis": "knee patellofemoral_joint",
    "gastrocnemius": "knee ankle subtalar",
    "soleus": "ankle subtalar",
    "popliteus": "knee",
    "gluteus_medius": "hip",
    "iliacus": "hip",
}


@pytest.mark.parametrize("action", PRIME_MOVERS)
def test_a_movement_has_exactly_its_prime_movers(action: str) -> None:
    joint, _, movement = action.partition(".")
    assert {fact.muscle for fact in prime_movers(content(), joint, movement)} == set(
        PRIME_MOVERS[action].split()
    )


@pytest.mark.parametrize("muscle", CROSSED)
def test_a_muscle_crosses_the_joints_that_it_is_known_for(muscle: str) -> None:
    known = set(CROSSED[muscle].split())
    assert known <= set(joints_crossed(content(), muscle))


@pytest.mark.parametrize(
    "muscle, joint",
    [
        ("vastus_lateralis", "hip"),
        ("soleus", "knee"),
        ("tibialis_anterior", "knee"),
        ("fibularis_longus", "knee"),
        ("flexor_digitorum_brevis", "ankle"),
        ("masseter", "atlanto_occipital_joints"),
    ],
)
def test_a_muscle_does_not_cross_the_next_joint(muscle: str, joint: str) -> None:
    assert joint not in joints_crossed(content(), muscle)


def test_the_short_head_of_biceps_femoris_acts_on_the_knee_alone() -> None:
    assert "hip" not in joints_crossed(content(), "biceps_femoris", "short_head")
    assert "hip" in joints_crossed(content(), "biceps_femoris", "long_head")


@pytest.mark.parametrize("joint", ["atlanto_axial_joints", "cervical_intervertebral_joints"])
def test_sternocleidomastoid_turns_away_and_splenius_towards_its_side(joint: str) -> None:
    away = {fact.muscle for fact in movers(content(), joint, "rotation_opposite_side", ("core",))}
    towards = {fact.muscle for fact in movers(content(), joint, "rotation_same_side", ("core",))}
    assert "sternocleidomastoid" in away - towards
    assert "splenius_capitis" in towards - away


@pytest.mark.parametrize(
    "dorsal, other, joint",
    [
        ("dorsal_interosseous_of_hand", "palmar_interosseous", "metacarpophalangeal_joints"),
        ("dorsal_interosseous_of_foot", "plantar_interosseous", "metatarsophalangeal_joints_of_lesser_toes"),
    ],
)
def test_dorsal_interossei_abduct_and_the_others_adduct(dorsal: str, other: str, joint: str) -> None:
    abductors = {fact.muscle for fact in movers(content(), joint, "abduction", ("core",))}
    adductors = {fact.muscle for fact in movers(content(), joint, "adduction", ("core",))}
    interossei = [muscle for muscle in content().muscles if "interosseous" in muscle]
    assert {one for one in interossei if dorsal in one} <= abductors - adductors
    assert {one for one in interossei if other in one} <= adductors - abductors
