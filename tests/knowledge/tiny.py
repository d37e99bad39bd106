"""A tiny but faultless knowledge base: two muscles of the arm and what they need."""

from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from quizroom.knowledge.catalogue import Catalogue, build_catalogue
from quizroom.knowledge.model import (
    Artery,
    Blood,
    Compartment,
    Course,
    Difference,
    Exempt,
    Landmark,
    LookAlike,
    Muscle,
    Name,
    Nerve,
    Note,
    Part,
    Region,
    Source,
    Supply,
)
from tests.knowledge.entries import CITED, act, at, bone, joint, landmark, movement, nerve, root

Tables = dict[str, Any]


def brachialis() -> Muscle:
    return Muscle(
        id="brachialis",
        name="brachialis",
        latin="musculus brachialis",
        meaning="of the arm",
        region="arm",
        compartment="arm_anterior",
        layer="deep",
        sources=CITED,
        origins=(at("humerus.anterior_surface", detail="distal half"),),
        insertions=(at("ulna.tuberosity"), at("ulna.coronoid_process")),
        actions=(act("elbow", "flexion"),),
        nerves=(
            Supply(nerve="musculocutaneous_nerve", roots=("C5", "C6"), main=("C6",), sources=CITED),
            Supply(nerve="radial_nerve", roots=("C6",), sources=CITED, status="variant"),
        ),
        arteries=(Blood(artery="brachial_artery", sources=CITED),),
        differ=(Difference(about="nerves", text="Some add the radial nerve.", sources=CITED),),
    )


def biceps() -> Muscle:
    return Muscle(
        id="biceps_brachii",
        name="biceps brachii",
        latin="musculus biceps brachii",
        meaning="two-headed muscle of the arm",
        region="arm",
        compartment="arm_anterior",
        layer="superficial",
        sources=CITED,
        names=(Name(term="biceps", kind="short", exact=False),),
        parts=(Part(id="long_head", name="long head"), Part(id="short_head", name="short head")),
        origins=(
            at("scapula.supraglenoid_tubercle", "long_head"),
            at("scapula.coracoid_process", "short_head"),
        ),
        insertions=(at("radius.tuberosity"),),
        actions=(
            act("elbow", "flexion"),
            act("radioulnar", "supination", condition="strongest with the elbow flexed"),
        ),
        nerves=(Supply(nerve="musculocutaneous_nerve", roots=("C5", "C6"), main=("C6",), sources=CITED),),
        arteries=(Blood(artery="brachial_artery", sources=CITED),),
        notes=(Note(text="Its tendon jerk tests C6.", kind="clinical", sources=CITED),),
    )


def tables() -> Tables:
    """The arguments of `build_catalogue`, new each time, so that a test may spoil them."""
    return {
        "sources": [Source(id="common_practice", title="What courses teach", access="common practice")],
        "regions": [Region(id="arm", name="arm", order=1, arteries=("brachial_artery",))],
        "compartments": [Compartment(id="arm_anterior", name="anterior compartment", region="arm")],
        "bones": [bone("scapula", 1), bone("humerus", 2), bone("ulna", 3), bone("radius", 3)],
        "landmarks": _landmarks(),
        "joints": [
            joint("shoulder", (("scapula", "humerus"),), ("flexion", "extension"), 1),
            joint("elbow", (("humerus", "ulna"),), ("flexion", "extension"), 2),
            joint("radioulnar", (("ulna", "radius"),), ("pronation", "supination"), 3),
        ],
        "movements": [
            movement("flexion", "extension"),
            movement("extension", "flexion"),
            movement("pronation", "supination"),
            movement("supination", "pronation"),
        ],
        "nerves": _nerves(),
        "arteries": [
            Artery(id="axillary_artery", name="axillary artery"),
            Artery(id="brachial_artery", name="brachial artery", parent="axillary_artery"),
        ],
        "lookalikes": [
            LookAlike(
                id="coracoid_and_coronoid",
                kind="landmark",
                members=("scapula.coracoid_process", "ulna.coronoid_process"),
                tell="Coracoid is the raven's beak.",
                sources=CITED,
            )
        ],
        "muscles": [biceps(), brachialis()],
        "courses": [
            Course(
                id="arm", title="Arm", muscles=("biceps_brachii", "brachialis"), families=("origin", "nerve")
            )
        ],
    }


def tiny(**changed: Any) -> Catalogue:
    """The faultless catalogue, with some tables put in the place of its own."""
    return build_catalogue(**(tables() | changed))


def with_changed(table: str, entry: str, **fields: Any) -> Catalogue:
    """The tiny catalogue with fields of one entry changed."""
    entries = [replace(one, **fields) if one.id == entry else one for one in tables()[table]]
    assert any(one.id == entry for one in entries)
    return tiny(**{table: entries})


def with_added(table: str, *entries: Any) -> Catalogue:
    """The tiny catalogue with entries added to one table."""
    return tiny(**{table: [*tables().get(table, []), *entries]})


def exempting(catalogue_tables: Mapping[str, Any], *exempt: Exempt) -> Catalogue:
    """A catalogue with listed exceptions."""
    return build_catalogue(**catalogue_tables, exempt=exempt)


def _landmarks() -> list[Landmark]:
    return [
        landmark("scapula.supraglenoid_tubercle"),
        landmark("scapula.coracoid_process"),
        landmark("humerus.shaft"),
        landmark("humerus.anterior_surface", within=("humerus.shaft",)),
        landmark("ulna.tuberosity", homologues=("radius.tuberosity",)),
        landmark("ulna.coronoid_process"),
        landmark("radius.tuberosity"),
    ]


def _nerves() -> list[Nerve]:
    return [
        root("C5"),
        root("C6"),
        root("C7"),
        nerve("upper_trunk", "trunk", ("C5", "C6"), ("c5", "c6")),
        nerve("middle_trunk", "trunk", ("C7",), ("c7",)),
        nerve("lateral_cord", "cord", ("C5", "C6", "C7"), ("upper_trunk", "middle_trunk")),
        nerve("musculocutaneous_nerve", "nerve", ("C5", "C6", "C7"), ("lateral_cord",)),
        nerve("radial_nerve", "nerve", ("C5", "C6", "C7"), ("upper_trunk", "middle_trunk")),
        nerve("posterior_interosseous_nerve", "branch", ("C7",), ("radial_nerve",)),
    ]
