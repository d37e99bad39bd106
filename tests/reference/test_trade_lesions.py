"""What complete lesions take away, derived from the nerve tree, against the lesion table of the trade.

The table stands as in standard texts (Moore, Snell, Aids to the Examination of the PNS), from memory;
the muscles that it calls lost and those that it warns are spared.
"""

from functools import cache

import pytest

from quizroom.knowledge.anatomy import Cut, Lesion, cut_at, lesion_of
from tests.shipped import content

SHORT_OF_HAND = "abductor_digiti_minimi_of_hand opponens_digiti_minimi adductor_pollicis palmaris_brevis"
LOST = {
    "lower_trunk": SHORT_OF_HAND + " abductor_pollicis_brevis opponens_pollicis first_lumbrical_of_hand",
    "anterior_interosseous_nerve_in_forearm": "flexor_pollicis_longus pronator_quadratus"
    " flexor_digitorum_profundus/lateral_half",
    "median_nerve_at_wrist": "abductor_pollicis_brevis opponens_pollicis first_lumbrical_of_hand"
    " flexor_pollicis_brevis/superficial_head second_lumbrical_of_hand",
    "ulnar_nerve_at_elbow": SHORT_OF_HAND + " flexor_carpi_ulnaris flexor_digitorum_profundus/medial_half",
    "ulnar_nerve_at_wrist": SHORT_OF_HAND + " third_lumbrical_of_hand first_dorsal_interosseous_of_hand",
    "femoral_nerve_below_inguinal_ligament": "rectus_femoris vastus_lateralis vastus_medialis"
    " vastus_intermedius sartorius pectineus",
    "obturator_nerve_in_obturator_canal": "adductor_longus adductor_brevis adductor_magnus/adductor_part"
    " gracilis obturator_externus",
    "inferior_gluteal_nerve_in_buttock": "gluteus_maximus",
    "sciatic_nerve_in_buttock": "biceps_femoris/short_head biceps_femoris/long_head semitendinosus"
    " semimembranosus adductor_magnus/hamstring_part tibialis_anterior soleus abductor_hallucis",
    "common_fibular_nerve_at_fibular_neck": "tibialis_anterior extensor_digitorum_longus"
    " extensor_hallucis_longus fibularis_tertius extensor_digitorum_brevis extensor_hallucis_brevis"
    " fibularis_longus fibularis_brevis",
    "superficial_fibular_nerve_in_lateral_compartment": "fibularis_longus fibularis_brevis",
    "tibial_nerve_in_popliteal_fossa": "gastrocnemius soleus plantaris popliteus tibialis_posterior"
    " flexor_digitorum_longus flexor_hallucis_longus abductor_hallucis quadratus_plantae",
    "medial_plantar_nerve_in_sole": "abductor_hallucis flexor_digitorum_brevis flexor_hallucis_brevis"
    " first_lumbrical_of_foot",
    "lateral_plantar_nerve_in_sole": "quadratus_plantae abductor_digiti_minimi_of_foot adductor_hallucis"
    " flexor_digiti_minimi_brevis_of_foot second_lumbrical_of_foot fourth_dorsal_interosseous_of_foot",
    "facial_nerve_at_stylomastoid_foramen": "occipitofrontalis orbicularis_oculi orbicularis_oris buccinator"
    " stylohyoid digastric/posterior_belly platysma",
    "facial_nerve_in_facial_canal": "stapedius orbicularis_oculi",
    "mandibular_nerve_at_foramen_ovale": "masseter temporalis medial_pterygoid lateral_pterygoid mylohyoid"
    " digastric/anterior_belly tensor_tympani tensor_veli_palatini",
    "accessory_nerve_at_jugular_foramen": "sternocleidomastoid trapezius",
    "hypoglossal_nerve_below_hypoglossal_canal": "genioglossus hyoglossus styloglossus",
    "oculomotor_nerve_before_orbit": "levator_palpebrae_superioris superior_rectus medial_rectus"
    " inferior_rectus inferior_oblique",
    "trochlear_nerve_before_orbit": "superior_oblique",
    "abducens_nerve_before_orbit": "lateral_rectus",
    "phrenic_nerve_on_scalenus_anterior": "diaphragm",
}
SPARED = {
    "lower_trunk": "deltoid biceps_brachii extensor_carpi_radialis_longus",
    "anterior_interosseous_nerve_in_forearm": "pronator_teres flexor_carpi_radialis opponens_pollicis",
    "median_nerve_at_wrist": "flexor_pollicis_longus pronator_quadratus adductor_pollicis",
    "ulnar_nerve_at_elbow": "opponens_pollicis first_lumbrical_of_hand",
    "ulnar_nerve_at_wrist": "flexor_carpi_ulnaris flexor_digitorum_profundus",
    "femoral_nerve_below_inguinal_ligament": "psoas_major iliacus",
    "obturator_nerve_in_obturator_canal": "adductor_magnus/hamstring_part pectineus",
    "inferior_gluteal_nerve_in_buttock": "semitendinosus gluteus_medius",
    "sciatic_nerve_in_buttock": "gluteus_maximus rectus_femoris adductor_longus gracilis sartorius",
    "common_fibular_nerve_at_fibular_neck": "biceps_femoris/short_head tibialis_posterior",
    "superficial_fibular_nerve_in_lateral_compartment": "tibialis_anterior fibularis_tertius",
    "tibial_nerve_in_popliteal_fossa": "semitendinosus fibularis_longus tibialis_anterior",
    "medial_plantar_nerve_in_sole": "adductor_hallucis second_lumbrical_of_foot",
    "lateral_plantar_nerve_in_sole": "abductor_hallucis first_lumbrical_of_foot",
    "facial_nerve_at_stylomastoid_foramen": "stapedius masseter levator_palpebrae_superioris",
    "facial_nerve_in_facial_canal": "tensor_tympani temporalis",
    "mandibular_nerve_at_foramen_ovale": "buccinator digastric/posterior_belly stapedius",
    "accessory_nerve_at_jugular_foramen": "levator_scapulae rhomboid_major",
    "hypoglossal_nerve_below_hypoglossal_canal": "palatoglossus geniohyoid",
    "oculomotor_nerve_before_orbit": "superior_oblique lateral_rectus",
    "trochlear_nerve_before_orbit": "inferior_oblique",
    "abducens_nerve_before_orbit": "medial_rectus",
    "phrenic_nerve_on_scalenus_anterior": "external_intercostals",
}
MOVEMENTS = [
    ("femoral_nerve_below_inguinal_ligament", "knee.extension", "lost"),
    ("femoral_nerve_below_inguinal_ligament", "hip.flexion", "weakened"),
    ("obturator_nerve_in_obturator_canal", "hip.adduction", "severely weakened"),
    ("inferior_gluteal_nerve_in_buttock", "hip.extension", "weakened"),
    ("superior_gluteal_nerve_in_buttock", "hip.abduction", "severely weakened"),
    ("sciatic_nerve_in_buttock", "ankle.dorsiflexion", "lost"),
    ("sciatic_nerve_in_buttock", "ankle.plantar_flexion", "lost"),
    ("common_fibular_nerve_at_fibular_neck", "ankle.dorsiflexion", "lost"),
    ("common_fibular_nerve_at_fibular_neck", "subtalar.eversion", "lost"),
    ("common_fibular_nerve_at_fibular_neck", "subtalar.inversion", "weakened"),
    ("superficial_fibular_nerve_in_lateral_compartment", "subtalar.eversion", "severely weakened"),
    ("tibial_nerve_in_popliteal_fossa", "ankle.plantar_flexion", "severely weakened"),
    ("tibial_nerve_in_popliteal_fossa", "subtalar.inversion", "weakened"),
    ("facial_nerve_at_stylomastoid_foramen", "palpebral_fissure.closure", "lost"),
    ("facial_nerve_at_stylomastoid_foramen", "forehead_skin_over_frontal_bone.wrinkling", "lost"),
    ("mandibular_nerve_at_foramen_ovale", "temporomandibular_joint.elevation", "lost"),
    (
        "accessory_nerve_at_jugular_foramen",
        "atlanto_axial_joints.rotation_opposite_side",
        "severely weakened",
    ),
    ("hypoglossal_nerve_below_hypoglossal_canal", "tongue_in_mouth.protrusion", "lost"),
    ("oculomotor_nerve_before_orbit", "eyeball_in_orbit.adduction", "lost"),
    ("abducens_nerve_before_orbit", "eyeball_in_orbit.abduction", "severely weakened"),
    ("median_nerve_at_wrist", "thumb_carpometacarpal.opposition", "severely weakened"),
    ("ulnar_nerve_at_wrist", "metacarpophalangeal_joints.abduction", "lost"),
]


@cache
def lesion(place: str) -> Lesion:
    """The lesion at a level, or of a whole trunk."""
    cut = cut_at(content(), place) if place in content().levels else Cut(nerves=frozenset((place,)))
    return lesion_of(content(), cut)


def units(names: str) -> set[str]:
    """Muscles and parts in words; a muscle with parts means all of them."""
    found = set()
    for name in names.split():
        muscle = content().muscles[name.partition("/")[0]]
        found |= {name} if "/" in name or not muscle.parts else {f"{name}/{part.id}" for part in muscle.parts}
    return found


@pytest.mark.parametrize("place", LOST)
def test_the_muscles_of_the_table_are_lost(place: str) -> None:
    assert units(LOST[place]) <= set(lesion(place).with_damage("lost"))


@pytest.mark.parametrize("place", SPARED)
def test_the_muscles_that_the_table_warns_of_are_spared(place: str) -> None:
    touched = {*lesion(place).with_damage("lost"), *lesion(place).with_damage("weakened")}
    assert not units(SPARED[place]) & touched


@pytest.mark.parametrize("place, movement, expected", MOVEMENTS)
def test_a_movement_suffers_as_in_the_table(place: str, movement: str, expected: str) -> None:
    effects = {f"{one.joint}.{one.movement}": one.effect for one in lesion(place).movements}
    assert effects.get(movement, "spared") == expected


def test_the_fibular_nerve_is_lost_as_its_two_branches_together() -> None:
    branches = [lesion(f"{name}_fibular_nerve") for name in ("superficial", "deep")]
    lost = {one for branch in branches for one in branch.with_damage("lost")}
    assert lost == set(lesion("common_fibular_nerve_at_fibular_neck").with_damage("lost"))
