"""Sets that every course asks for: "name the three muscles of the musculocutaneous nerve".

All values here: common practice, no source; written from memory.
"""

import pytest

from quizroom.knowledge.anatomy import attachments_at, muscles_of_nerve, supplies_of_nerve
from tests.shipped import content

NERVES = {
    "long_thoracic_nerve": "serratus_anterior",
    "thoracodorsal_nerve": "latissimus_dorsi",
    "inferior_gluteal_nerve": "gluteus_maximus",
    "trochlear_nerve": "superior_oblique",
    "abducens_nerve": "lateral_rectus",
    "glossopharyngeal_nerve": "stylopharyngeus",
    "phrenic_nerve": "diaphragm",
    "external_branch_of_superior_laryngeal_nerve": "cricothyroid",
    "superficial_branch_of_ulnar_nerve": "palmaris_brevis",
    "axillary_nerve": "deltoid teres_minor",
    "suprascapular_nerve": "supraspinatus infraspinatus",
    "superficial_fibular_nerve": "fibularis_longus fibularis_brevis",
    "lower_subscapular_nerve": "subscapularis teres_major",
    "nerve_to_quadratus_femoris": "quadratus_femoris inferior_gemellus",
    "nerve_to_obturator_internus": "obturator_internus superior_gemellus",
    "accessory_nerve": "sternocleidomastoid trapezius",
    "c1_through_hypoglossal_nerve": "geniohyoid thyrohyoid",
    "musculocutaneous_nerve": "coracobrachialis biceps_brachii brachialis",
    "superior_gluteal_nerve": "gluteus_medius gluteus_minimus tensor_fasciae_latae",
    "anterior_interosseous_nerve": "flexor_pollicis_longus flexor_digitorum_profundus pronator_quadratus",
    "recurrent_branch_of_median_nerve": "abductor_pollicis_brevis flexor_pollicis_brevis opponens_pollicis",
    "ansa_cervicalis": "sternohyoid sternothyroid omohyoid",
    "dorsal_scapular_nerve": "rhomboid_major rhomboid_minor levator_scapulae",
    "medial_plantar_nerve": "abductor_hallucis flexor_digitorum_brevis flexor_hallucis_brevis"
    " first_lumbrical_of_foot",
    "suboccipital_nerve": "rectus_capitis_posterior_major rectus_capitis_posterior_minor"
    " obliquus_capitis_superior obliquus_capitis_inferior",
    "obturator_nerve": "obturator_externus adductor_longus adductor_brevis adductor_magnus gracilis",
    "oculomotor_nerve": "levator_palpebrae_superioris superior_rectus medial_rectus inferior_rectus"
    " inferior_oblique",
    "deep_fibular_nerve": "tibialis_anterior extensor_hallucis_longus extensor_digitorum_longus"
    " fibularis_tertius extensor_digitorum_brevis extensor_hallucis_brevis",
    "mandibular_nerve": "masseter temporalis medial_pterygoid lateral_pterygoid mylohyoid digastric"
    " tensor_tympani tensor_veli_palatini",
}
SITES = {
    "scapula.coracoid_process": "pectoralis_minor coracobrachialis biceps_brachii/short_head",
    "humerus.greater_tubercle": "supraspinatus infraspinatus teres_minor",
    "tibia.upper_part_of_medial_surface": "sartorius gracilis semitendinosus",
    "femur.lesser_trochanter": "psoas_major iliacus",
    "hip_bone.anterior_superior_iliac_spine": "sartorius tensor_fasciae_latae",
    "soft.iliotibial_tract": "gluteus_maximus tensor_fasciae_latae",
    "soft.calcaneal_tendon": "gastrocnemius soleus",
    "tibia.tibial_tuberosity": "rectus_femoris vastus_lateralis vastus_medialis vastus_intermedius",
    "temporal_bone.styloid_process": "styloglossus stylohyoid stylopharyngeus",
    "temporal_bone.mastoid_process": "sternocleidomastoid splenius_capitis longissimus_capitis",
    "soft.common_tendinous_ring": "superior_rectus inferior_rectus medial_rectus lateral_rectus",
    "femur.trochanteric_fossa": "obturator_externus",
    "navicular.tuberosity": "tibialis_posterior",
}
COMPARTMENTS = {
    "hand_thenar": 3,
    "leg_lateral": 2,
    "leg_anterior": 4,
    "leg_posterior": 7,
    "muscles_of_mastication": 4,
    "neck_infrahyoid": 4,
    "neck_suprahyoid": 4,
    "neck_suboccipital": 4,
    "thigh_posterior": 3,
    "tongue_intrinsic": 4,
    "pharynx_constrictors": 3,
}


@pytest.mark.parametrize("nerve", NERVES)
def test_a_nerve_has_exactly_the_muscles_that_are_learned(nerve: str) -> None:
    assert set(muscles_of_nerve(content(), nerve)) == set(NERVES[nerve].split())


@pytest.mark.parametrize("site", SITES)
def test_a_landmark_holds_exactly_the_muscles_that_are_learned(site: str) -> None:
    attached = {
        f"{fact.muscle}/{fact.part}" if fact.part else fact.muscle
        for fact in attachments_at(content(), site, ("core",))
    }
    assert attached == set(SITES[site].split())


@pytest.mark.parametrize("compartment", COMPARTMENTS)
def test_a_group_has_as_many_muscles_as_are_learned(compartment: str) -> None:
    held = [one.id for one in content().muscles.values() if one.compartment == compartment]
    assert len(held) == COMPARTMENTS[compartment], held


@pytest.mark.parametrize(
    "nerve, region, count",
    [
        ("median_nerve", "hand", 5),
        ("tibial_nerve", "leg", 7),
        ("deep_fibular_nerve", "leg", 4),
        ("ulnar_nerve", "forearm", 2),
    ],
)
def test_a_nerve_has_so_many_muscles_in_a_region(nerve: str, region: str, count: int) -> None:
    muscles = muscles_of_nerve(content(), nerve)
    assert sum(content().muscles[muscle].region == region for muscle in muscles) == count


def test_the_three_tendons_of_the_goose_foot_have_three_nerves() -> None:
    nerves = ("femoral_nerve", "obturator_nerve", "tibial_division_of_sciatic_nerve")
    foot = {
        fact.muscle for fact in attachments_at(content(), "tibia.upper_part_of_medial_surface", ("core",))
    }
    assert [len(foot & set(muscles_of_nerve(content(), nerve))) for nerve in nerves] == [1, 1, 1]


def test_the_bellies_of_digastric_have_different_nerves() -> None:
    held = {
        nerve: [fact.part for fact in supplies_of_nerve(content(), nerve) if fact.muscle == "digastric"]
        for nerve in ("mandibular_nerve", "facial_nerve")
    }
    assert held == {"mandibular_nerve": ["anterior_belly"], "facial_nerve": ["posterior_belly"]}


@pytest.mark.parametrize(
    "nerve, besides",
    [
        ("facial_nerve", {"masseter", "levator_palpebrae_superioris"}),
        ("hypoglossal_nerve", {"palatoglossus"}),
    ],
)
def test_a_nerve_does_not_have_the_muscles_that_are_mixed_up_with_its_own(
    nerve: str, besides: set[str]
) -> None:
    assert not besides & set(muscles_of_nerve(content(), nerve, ("core", "variant")))


def test_the_buccinator_has_the_facial_nerve_and_never_the_buccal() -> None:
    nerves = {supply.nerve for supply in content().muscles["buccinator"].nerves}
    assert "buccal_nerve" not in nerves
