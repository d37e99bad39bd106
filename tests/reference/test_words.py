"""The words of the outside tables are read as what they mean, and no reading lies idle."""

import re
from fnmatch import filter as fitting
from fnmatch import fnmatchcase

import pytest

from tests.reference.comparison import content
from tests.reference.labels import concepts
from tests.reference.models import meaning
from tests.reference.motions import Claim, claims
from tests.reference.places import bones_named, sites_named
from tests.reference.rows import TABLES, Row, Target, every_row, targets, words

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


def test_every_muscle_and_part_that_is_meant_exists() -> None:
    rows = [one for table in TABLES for one in every_row(table)]
    meant = {target for one in rows for target in targets(one)}
    ours = {(muscle.id, part) for muscle in content().muscles.values() for part in _parts(muscle.id)}
    assert meant <= ours


def test_every_name_is_one_that_a_table_has() -> None:
    rows = [one for table in TABLES for one in every_row(table)]
    assert set(words("names")) <= {
        name for one in rows for name in (one.muscle, f"{one.muscle} / {one.part}")
    }


@pytest.mark.parametrize("table, ids", [("bones", content().bones), ("landmarks", content().landmarks)])
def test_every_place_is_named_somewhere_and_exists(table: str, ids: dict[str, object]) -> None:
    rows = [one for name in ("openstax_ap2e", "uberon") for one in every_row(name)]
    texts = {text.lower() for one in rows for text in (one.value, one.note)}
    for pattern, globs in words("places")[table].items():
        assert any(re.search(pattern, text) for text in texts), pattern
        assert all(fitting(ids, glob) for glob in globs), globs


@pytest.mark.parametrize("table, ids", [("bodies", content().bones), ("joints", content().joints)])
def test_every_word_of_the_models_is_used_and_has_its_meaning(table: str, ids: dict[str, object]) -> None:
    rows = [one for name in ("myosim_moment_arms", "opensim_neck") for one in every_row(name)]
    used = {one.value.partition(": ")[0] for one in rows}
    for key, globs in words("models")[table].items():
        assert any(fnmatchcase(word, key) or word == key for word in used), key
        assert all(fitting(ids, glob) for glob in globs), globs


def _parts(muscle: str) -> list[str]:
    return ["", *(part.id for part in content().muscles[muscle].parts)]
