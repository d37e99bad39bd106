"""Readings on which books and papers differ: each is recorded, so that it can never be a wrong option.

Who says what: common practice, no source; the dissection studies are named in the content itself.
"""

import pytest

from quizroom.knowledge.anatomy import nerve_ancestors, nerve_descendants
from tests.shipped import content

READINGS = """
brachialis nerve musculocutaneous_nerve core
brachialis nerve radial_nerve variant
brachialis nerve median_nerve minority
coracobrachialis action glenohumeral.adduction core
coracobrachialis action glenohumeral.medial_rotation minority
pectineus nerve femoral_nerve core
pectineus nerve obturator_nerve variant
pectineus nerve accessory_obturator_nerve minority
adductor_magnus nerve tibial_division_of_sciatic_nerve core
adductor_magnus action hip.extension variant
adductor_longus action hip.medial_rotation variant
adductor_longus action hip.lateral_rotation variant
adductor_brevis action hip.medial_rotation variant
adductor_brevis action hip.lateral_rotation variant
flexor_digitorum_profundus nerve ulnar_nerve variant
second_lumbrical_of_hand nerve ulnar_nerve variant
third_lumbrical_of_hand nerve median_nerve variant
flexor_pollicis_brevis nerve ulnar_nerve variant
flexor_pollicis_brevis nerve median_nerve variant
extensor_carpi_radialis_brevis nerve deep_branch_of_radial_nerve core
extensor_carpi_radialis_brevis nerve superficial_branch_of_radial_nerve variant
supinator nerve posterior_interosseous_nerve variant
triceps_brachii nerve axillary_nerve variant
biceps_brachii action glenohumeral.abduction variant
trapezius nerve branches_of_c3_and_c4 variant
trapezius action scapulothoracic.downward_rotation minority
trapezius action scapulothoracic.upward_rotation core
levator_scapulae nerve branches_of_c3_and_c4 core
levator_scapulae nerve dorsal_scapular_nerve core
pectoralis_minor origin ribs.ribs_2_4 variant
serratus_anterior origin ribs.ribs_1_9 variant
serratus_anterior action costovertebral_joints.elevation variant
latissimus_dorsi origin ribs.ribs_10_12 variant
latissimus_dorsi origin scapula.inferior_angle variant
teres_major nerve thoracodorsal_nerve minority
teres_minor action glenohumeral.extension minority
teres_minor action glenohumeral.adduction variant
supraspinatus action glenohumeral.lateral_rotation variant
subscapularis action glenohumeral.adduction variant
abductor_pollicis_longus action wrist.flexion variant
gluteus_medius action hip.lateral_rotation variant
gluteus_minimus action hip.lateral_rotation variant
gluteus_maximus action hip.abduction variant
gluteus_maximus action hip.adduction variant
piriformis action hip.medial_rotation variant
tensor_fasciae_latae action knee.extension variant
psoas_major action hip.lateral_rotation variant
psoas_major action hip.medial_rotation variant
biceps_femoris nerve common_fibular_nerve variant
biceps_femoris nerve sciatic_nerve core
semitendinosus nerve tibial_nerve variant
semitendinosus nerve sciatic_nerve core
popliteus action knee.lateral_rotation variant
tibialis_posterior insertion cuboid.cuboid core
second_lumbrical_of_foot nerve medial_plantar_nerve minority
diaphragm origin ribs.internal_surfaces_of_ribs_6_12 variant
internal_intercostals action costovertebral_joints.elevation core
sternocleidomastoid action atlanto_occipital_joints.extension core
sternocleidomastoid action cervical_intervertebral_joints.flexion core
sternocleidomastoid nerve branches_of_c2_and_c3 variant
lateral_pterygoid action temporomandibular_joint.elevation variant
quadratus_lumborum origin ribs.ribs_5_10 minority
internal_oblique origin ribs.ribs_5_12 minority
geniohyoid nerve hypoglossal_nerve variant
thyrohyoid nerve hypoglossal_nerve variant
palatoglossus nerve pharyngeal_plexus core
pubococcygeus nerve pudendal_nerve variant
puborectalis nerve pudendal_nerve variant
puborectalis nerve nerve_to_levator_ani core
"""
"""Muscle, kind, value, and a status that one of its facts must have."""

TOLD = """
brachialis nerves
trapezius nerves
trapezius actions
pectineus compartment
adductor_pollicis compartment
brachioradialis compartment
obturator_externus compartment
palmaris_brevis compartment
triceps_brachii nerves
anconeus roots
rhomboid_major roots
pectoralis_major names
first_palmar_interosseous names
psoas_major names
semitendinosus names
rectus_femoris parts
gastrocnemius roots
tibialis_posterior roots
fibularis_tertius names
extensor_hallucis_brevis names
buccinator nerves
"""
"""Muscle and the topic on which the record must say who says what."""


def statuses(muscle: str, kind: str, value: str) -> set[str]:
    """Statuses of the facts that hold the value; of a nerve also those that name a branch of it."""
    values = {value, *(nerve_descendants(content(), value) if kind == "nerve" else ())}
    facts = (fact for one in values for fact in content().index.facts_with.get((kind, one), ()))
    return {fact.status for fact in facts if fact.muscle == muscle}


@pytest.mark.parametrize("reading", READINGS.strip().splitlines())
def test_each_reading_is_recorded_with_its_standing(reading: str) -> None:
    muscle, kind, value, status = reading.split()
    assert status in statuses(muscle, kind, value)


@pytest.mark.parametrize("topic", TOLD.strip().splitlines())
def test_a_contest_is_told_to_the_student(topic: str) -> None:
    muscle, about = topic.split()
    assert about in {difference.about for difference in content().muscles[muscle].differ}


def test_what_is_told_of_the_supinator_holds_wherever_the_branch_is_renamed() -> None:
    assert "deep_branch_of_radial_nerve" in nerve_ancestors(content(), "posterior_interosseous_nerve")


def test_the_two_bellies_of_digastric_are_no_contest() -> None:
    assert {supply.status for supply in content().muscles["digastric"].nerves} == {"core"}
