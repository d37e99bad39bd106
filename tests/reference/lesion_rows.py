"""The lesion table of the trade, row by row: what is lost, what is spared, what becomes of movements.

As in standard texts (Moore, Snell, Aids to the Examination of the PNS), from memory. `@region` stands for
all muscles of a region.
"""

from typing import NamedTuple


class Row(NamedTuple):
    """A row: the place of the cut, and muscles (or `muscle/part`) and `joint.movement=effect` in words."""

    place: str
    lost: str
    spared: str = ""
    movements: str = ""
    weak: str = ""


INTEROSSEI = (
    " first_dorsal_interosseous_of_hand second_dorsal_interosseous_of_hand third_dorsal_interosseous_of_hand"
    " fourth_dorsal_interosseous_of_hand first_palmar_interosseous second_palmar_interosseous"
    " third_palmar_interosseous"
)
OF_ULNAR_IN_HAND = (
    "abductor_digiti_minimi_of_hand flexor_digiti_minimi_brevis_of_hand opponens_digiti_minimi"
    " palmaris_brevis third_lumbrical_of_hand fourth_lumbrical_of_hand adductor_pollicis"
    " flexor_pollicis_brevis/deep_head" + INTEROSSEI
)
OF_MEDIAN_IN_HAND = (
    " abductor_pollicis_brevis opponens_pollicis flexor_pollicis_brevis/superficial_head"
    " first_lumbrical_of_hand second_lumbrical_of_hand"
)
OF_DEEP_RADIAL = (
    " extensor_carpi_ulnaris extensor_digitorum extensor_digiti_minimi abductor_pollicis_longus"
    " extensor_pollicis_longus extensor_pollicis_brevis extensor_indicis"
)
OF_COMMON_FIBULAR = (
    " tibialis_anterior extensor_digitorum_longus extensor_hallucis_longus fibularis_tertius"
    " extensor_digitorum_brevis extensor_hallucis_brevis fibularis_longus fibularis_brevis"
)
OF_MEDIAL_PLANTAR = (
    " abductor_hallucis flexor_digitorum_brevis flexor_hallucis_brevis first_lumbrical_of_foot"
)
OF_LATERAL_PLANTAR = (
    " quadratus_plantae abductor_digiti_minimi_of_foot flexor_digiti_minimi_brevis_of_foot adductor_hallucis"
    " second_lumbrical_of_foot third_lumbrical_of_foot fourth_lumbrical_of_foot"
    " first_dorsal_interosseous_of_foot second_dorsal_interosseous_of_foot third_dorsal_interosseous_of_foot"
    " fourth_dorsal_interosseous_of_foot first_plantar_interosseous second_plantar_interosseous"
    " third_plantar_interosseous"
)
OF_TIBIAL = (
    " gastrocnemius soleus plantaris popliteus tibialis_posterior flexor_digitorum_longus"
    " flexor_hallucis_longus" + OF_MEDIAL_PLANTAR + OF_LATERAL_PLANTAR
)
OF_FACE = "@face platysma stylohyoid digastric/posterior_belly"

ROWS = {
    "U1": Row(
        "upper_trunk",
        "supraspinatus infraspinatus subclavius deltoid teres_minor biceps_brachii brachialis",
        spared="serratus_anterior rhomboid_major rhomboid_minor levator_scapulae abductor_pollicis_brevis",
        weak="coracobrachialis brachioradialis supinator extensor_carpi_radialis_longus subscapularis"
        " teres_major pectoralis_major/clavicular_head",
        movements="glenohumeral.abduction=lost glenohumeral.lateral_rotation=lost"
        " elbow.flexion=severely_weakened radioulnar_joints.supination=weakened",
    ),
    "U2": Row(
        "lower_trunk",
        OF_ULNAR_IN_HAND + OF_MEDIAN_IN_HAND,
        spared="deltoid biceps_brachii brachialis supinator extensor_carpi_radialis_longus",
        weak="flexor_carpi_ulnaris flexor_digitorum_profundus flexor_digitorum_superficialis"
        " flexor_pollicis_longus pronator_quadratus pectoralis_major/sternocostal_head",
        movements="metacarpophalangeal_joints.abduction=lost metacarpophalangeal_joints.adduction=lost"
        " thumb_carpometacarpal.opposition=lost",
    ),
    "U3": Row(
        "long_thoracic_nerve_on_chest_wall",
        "serratus_anterior",
        spared="trapezius rhomboid_major",
        movements="scapulothoracic.protraction=severely_weakened scapulothoracic.upward_rotation=weakened",
    ),
    "U5": Row(
        "thoracodorsal_nerve_in_axilla",
        "latissimus_dorsi",
        spared="teres_major",
        movements="glenohumeral.extension=weakened glenohumeral.adduction=weakened",
    ),
    "U7": Row(
        "axillary_nerve_at_surgical_neck",
        "deltoid teres_minor",
        spared="supraspinatus infraspinatus",
        movements="glenohumeral.abduction=weakened glenohumeral.lateral_rotation=weakened"
        " glenohumeral.flexion=weakened glenohumeral.extension=weakened",
    ),
    "U8": Row(
        "musculocutaneous_nerve_in_arm",
        "coracobrachialis biceps_brachii brachialis",
        spared="brachioradialis pronator_teres supinator",
        movements="elbow.flexion=severely_weakened radioulnar_joints.supination=weakened"
        " glenohumeral.flexion=weakened",
    ),
    "U9": Row(
        "radial_nerve_in_axilla",
        "triceps_brachii anconeus brachioradialis extensor_carpi_radialis_longus"
        " extensor_carpi_radialis_brevis supinator" + OF_DEEP_RADIAL,
        spared="biceps_brachii",
        movements="elbow.extension=lost wrist.extension=lost metacarpophalangeal_joints.extension=lost"
        " thumb_metacarpophalangeal.extension=lost proximal_interphalangeal_joints.extension=weakened",
    ),
    "U11": Row(
        "posterior_interosseous_nerve_at_supinator",
        OF_DEEP_RADIAL,
        spared="brachioradialis extensor_carpi_radialis_longus extensor_carpi_radialis_brevis",
        movements="metacarpophalangeal_joints.extension=lost thumb_metacarpophalangeal.extension=lost"
        " wrist.extension=weakened",
    ),
    "U12": Row("superficial_branch_of_radial_nerve_at_wrist", ""),
    "U14": Row(
        "anterior_interosseous_nerve_in_forearm",
        "flexor_pollicis_longus flexor_digitorum_profundus/lateral_half pronator_quadratus",
        spared="pronator_teres flexor_carpi_radialis palmaris_longus flexor_digitorum_superficialis"
        " opponens_pollicis",
        movements="thumb_interphalangeal.flexion=lost distal_interphalangeal_joints.flexion=weakened",
    ),
    "U15": Row(
        "median_nerve_at_wrist",
        OF_MEDIAN_IN_HAND,
        spared="flexor_pollicis_longus pronator_quadratus pronator_teres adductor_pollicis",
        movements="thumb_carpometacarpal.opposition=severely_weakened"
        " thumb_carpometacarpal.abduction=weakened",
    ),
    "U17": Row(
        "ulnar_nerve_at_elbow",
        OF_ULNAR_IN_HAND + " flexor_carpi_ulnaris flexor_digitorum_profundus/medial_half",
        spared="flexor_digitorum_profundus/lateral_half first_lumbrical_of_hand second_lumbrical_of_hand"
        " opponens_pollicis abductor_pollicis_brevis",
        movements="metacarpophalangeal_joints.abduction=lost metacarpophalangeal_joints.adduction=lost"
        " thumb_carpometacarpal.adduction=lost distal_interphalangeal_joints.flexion=weakened"
        " wrist.flexion=weakened wrist.ulnar_deviation=weakened",
    ),
    "U18": Row(
        "ulnar_nerve_at_wrist",
        OF_ULNAR_IN_HAND,
        spared="flexor_carpi_ulnaris flexor_digitorum_profundus",
        movements="metacarpophalangeal_joints.abduction=lost distal_interphalangeal_joints.flexion=spared",
    ),
    "L1": Row(
        "femoral_nerve_below_inguinal_ligament",
        "rectus_femoris vastus_lateralis vastus_medialis vastus_intermedius sartorius pectineus",
        spared="psoas_major iliacus",
        movements="knee.extension=lost hip.flexion=weakened",
    ),
    "L2": Row(
        "obturator_nerve_in_obturator_canal",
        "adductor_longus adductor_brevis adductor_magnus/adductor_part gracilis obturator_externus",
        spared="adductor_magnus/hamstring_part pectineus",
        movements="hip.adduction=severely_weakened",
    ),
    "L4": Row(
        "inferior_gluteal_nerve_in_buttock",
        "gluteus_maximus",
        spared="semitendinosus semimembranosus biceps_femoris gluteus_medius",
        movements="hip.extension=weakened",
    ),
    "L5": Row(
        "sciatic_nerve_in_buttock",
        "semitendinosus semimembranosus biceps_femoris adductor_magnus/hamstring_part"
        + OF_COMMON_FIBULAR
        + OF_TIBIAL,
        spared="gluteus_maximus gluteus_medius rectus_femoris adductor_longus sartorius gracilis",
        movements="knee.flexion=severely_weakened ankle.dorsiflexion=lost ankle.plantar_flexion=lost",
    ),
    "L6": Row(
        "common_fibular_nerve_at_fibular_neck",
        OF_COMMON_FIBULAR,
        spared="biceps_femoris/short_head tibialis_posterior",
        movements="ankle.dorsiflexion=lost subtalar.eversion=lost subtalar.inversion=weakened",
    ),
    "L8": Row(
        "superficial_fibular_nerve_in_lateral_compartment",
        "fibularis_longus fibularis_brevis",
        spared="tibialis_anterior extensor_digitorum_longus fibularis_tertius",
        movements="subtalar.eversion=severely_weakened ankle.dorsiflexion=spared",
    ),
    "L9": Row(
        "tibial_nerve_in_popliteal_fossa",
        OF_TIBIAL,
        spared="semitendinosus semimembranosus biceps_femoris fibularis_longus fibularis_brevis"
        " tibialis_anterior",
        movements="ankle.plantar_flexion=severely_weakened subtalar.inversion=weakened"
        " distal_interphalangeal_joints_of_toes.flexion=lost",
    ),
    "L11 medial": Row(
        "medial_plantar_nerve_in_sole", OF_MEDIAL_PLANTAR, spared="quadratus_plantae second_lumbrical_of_foot"
    ),
    "L11 lateral": Row(
        "lateral_plantar_nerve_in_sole",
        OF_LATERAL_PLANTAR,
        spared="abductor_hallucis first_lumbrical_of_foot",
    ),
    "H1": Row(
        "facial_nerve_at_stylomastoid_foramen",
        OF_FACE,
        spared="stapedius masseter temporalis levator_palpebrae_superioris",
        movements="forehead_skin_over_frontal_bone.wrinkling=lost palpebral_fissure.closure=lost",
    ),
    "H2": Row("facial_nerve_in_facial_canal", OF_FACE + " stapedius", spared="tensor_tympani temporalis"),
    "H3": Row(
        "mandibular_nerve_at_foramen_ovale",
        "masseter temporalis medial_pterygoid lateral_pterygoid mylohyoid digastric/anterior_belly"
        " tensor_tympani tensor_veli_palatini",
        spared="buccinator digastric/posterior_belly",
        movements="temporomandibular_joint.lateral_deviation_opposite_side=lost",
    ),
    "H5": Row(
        "accessory_nerve_at_jugular_foramen",
        "sternocleidomastoid trapezius",
        spared="levator_scapulae rhomboid_major",
        movements="atlanto_axial_joints.rotation_opposite_side=severely_weakened",
    ),
    "H6": Row(
        "hypoglossal_nerve_below_hypoglossal_canal",
        "superior_longitudinal_muscle_of_the_tongue inferior_longitudinal_muscle_of_the_tongue"
        " transverse_muscle_of_the_tongue vertical_muscle_of_the_tongue genioglossus hyoglossus styloglossus",
        spared="palatoglossus geniohyoid",
        movements="tongue_in_mouth.lateral_deviation_opposite_side=lost",
    ),
    "H8 third": Row(
        "oculomotor_nerve_before_orbit",
        "levator_palpebrae_superioris superior_rectus medial_rectus inferior_rectus inferior_oblique",
        spared="superior_oblique lateral_rectus",
        movements="eyeball_in_orbit.adduction=lost",
    ),
    "H8 fourth": Row(
        "trochlear_nerve_before_orbit",
        "superior_oblique",
        spared="inferior_oblique",
        movements="eyeball_in_orbit.depression=weakened",
    ),
    "H8 sixth": Row(
        "abducens_nerve_before_orbit",
        "lateral_rectus",
        spared="medial_rectus",
        movements="eyeball_in_orbit.abduction=severely_weakened",
    ),
    "H9": Row(
        "phrenic_nerve_on_scalenus_anterior",
        "diaphragm",
        spared="external_intercostals",
        movements="dome_of_diaphragm.depression=lost",
    ),
}

MORE_LOST = {
    "U1": "teres_major pectoralis_major/clavicular_head",
    "U2": "flexor_digitorum_profundus flexor_pollicis_longus pronator_quadratus pectoralis_minor"
    " pectoralis_major/abdominal_part",
    "U9": "articularis_cubiti",
    "L1": "articularis_genus",
    "H6": "chondroglossus",
}
"""What the rule takes besides what the table lists. Why:

- U1: Moore gives C5 and C6 alone for both, so that no segment is left; other books add C7, and the table
  calls them weak. No question takes teres major for lost (`segments` of its difference).
- U2: likewise C8 and T1 for the deep flexors and pronator quadratus, for which muscle-testing charts
  have C7 and C8: no question takes them for lost. The pectoral parts have the medial pectoral nerve alone.
- U9, L1, H6: small muscles that the table takes with triceps, vastus intermedius and hyoglossus.
"""
