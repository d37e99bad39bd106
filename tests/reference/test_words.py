"""The words of the outside tables are read as what they mean, and no reading lies idle."""

import pytest

from tests.reference.models import meaning
from tests.reference.motions import Claim, claims
from tests.reference.places import bones_named, sites_named
from tests.reference.rows import Row, Target, targets
from tests.reference.supplies import concepts
from tests.shipped import content

WRIST = ("wrist", "intercarpal_joints")
THUMB = ("thumb_carpometacarpal", "thumb_metacarpophalangeal", "thumb_interphalangeal")


def row(muscle: str = "", part: str = "", value: str = "", fact_type: str = "action") -> Row:
    return Row("", "", muscle, part, fact_type, value, "")


@pytest.mark.parametrize(
    "text, bones, sites",
    [
        ("Medial epicondyle of humerus", [{"humerus"}], [{"humerus.medial_epicondyle"}]),
        ("Extensor retinaculum", [], [{"soft.inferior_extensor_retinaculum_of_foot"}]),
        ("Mandible", [{"mandible"}], []),
        (
            "Base of second and third metacarpals",
            [{"metacarpal_2"}, {"metacarpal_3"}],
            [{"metacarpal_2.base"}, {"metacarpal_3.base"}],
        ),
    ],
)
def test_a_place_is_read_as_bones_and_landmarks(
    text: str, bones: list[set[str]], sites: list[set[str]]
) -> None:
    assert [set(any_of) for any_of in bones_named(content(), text)] == bones
    assert [set(any_of) for any_of in sites_named(content(), text)] == sites


@pytest.mark.parametrize(
    "text, claimed",
    [
        ("Wrist; hand: Flexion", [Claim((*WRIST, *WRIST), ("flexion",))]),
        (
            "Thumb: abduction; wrist: abduction",
            [
                Claim(THUMB, ("abduction", "radial_deviation")),
                Claim(WRIST, ("abduction", "radial_deviation")),
            ],
        ),
        (
            "Eyeballs: Superior (elevates); medial (adducts)",
            [
                Claim(("eyeball_in_orbit",), ("elevation",)),
                Claim(("eyeball_in_orbit",), ("adduction", "ulnar_deviation")),
            ],
        ),
        (
            "Tibia/fibula: flexion; thigh: extension, medial rotation",
            [
                Claim(("knee",), ("flexion",)),
                Claim(("hip",), ("extension",)),
                Claim(("hip",), ("medial_rotation",)),
            ],
        ),
    ],
)
def test_an_action_column_is_read_as_joints_and_movements(text: str, claimed: list[Claim]) -> None:
    assert list(claims(text)) == claimed


@pytest.mark.parametrize(
    "value, joints, movement",
    [
        ("wrist: abduction (radial deviation)", ["wrist"], "radial_deviation"),
        ("ring finger DIP: flexion", ["distal_interphalangeal_joints"], "flexion"),
        ("lower neck (C2-T1): flexion", ["cervical_intervertebral_joints"], "flexion"),
        ("hip at 90 deg flexion: medial rotation", [], "medial_rotation"),
    ],
)
def test_the_words_of_the_models_are_read(value: str, joints: list[str], movement: str) -> None:
    assert meaning(row(value=value)) == (joints, movement)


@pytest.mark.parametrize(
    "muscle, part, ours",
    [
        ("Flexor carpi ulnaris", "", [Target("flexor_carpi_ulnaris", "")]),
        ("Biceps femoris", "short head", [Target("biceps_femoris", "short_head")]),
        ("Levator ani", "iliococcygeus", [Target("iliococcygeus", "")]),
        ("Gluteus medius", "anterior fibres", [Target("gluteus_medius", "")]),
        ("Triceps surae", "", [Target("gastrocnemius", ""), Target("soleus", "")]),
        ("Orbitalis", "", []),
    ],
)
def test_a_name_is_read_as_muscles_of_ours(muscle: str, part: str, ours: list[Target]) -> None:
    assert list(targets(row(muscle, part))) == ours


def test_a_nerve_is_known_by_any_of_its_names() -> None:
    assert concepts(content(), "Oculomotor nerve (CN III)", "nerve") == {"oculomotor_nerve"}
    assert concepts(content(), "thoracic nerve", "nerve") == {"long_thoracic_nerve"}
