"""For each content rule one way of breaking it, in a knowledge base that is faultless otherwise."""

from collections.abc import Callable
from dataclasses import replace
from typing import Any

from quizroom.knowledge.catalogue import Catalogue
from quizroom.knowledge.model import (
    Artery,
    Course,
    Difference,
    HouseRule,
    Level,
    LookAlike,
    Name,
    Part,
    Source,
    Supply,
)
from tests.knowledge.entries import CITED, act, at, bone, joint, landmark, movement, nerve
from tests.knowledge.tiny import biceps, brachialis, tables, tiny, with_added, with_changed

Breach = Callable[[], Catalogue]
SUPPLY = Supply(nerve="musculocutaneous_nerve", roots=("C5", "C6"), main=("C6",), sources=CITED)


def _brachialis(**fields: object) -> Breach:
    return lambda: with_changed("muscles", "brachialis", **fields)


def _biceps(**fields: object) -> Breach:
    return lambda: with_changed("muscles", "biceps_brachii", **fields)


def _course(**fields: object) -> Breach:
    return lambda: with_changed("courses", "arm", **fields)


def _two_equal_ways() -> Catalogue:
    bridge = joint("bridge", (("humerus", "clavicle"), ("clavicle", "radius")), ("flexion", "extension"), 9)
    return tiny(
        bones=[*tables()["bones"], bone("clavicle", 1)],
        joints=[*tables()["joints"], bridge],
        muscles=[brachialis(), replace(biceps(), origins=(at("humerus.shaft"),))],
    )


def _far_landmark() -> Catalogue:
    return tiny(
        bones=[*tables()["bones"], bone("femur", 9)],
        landmarks=[*tables()["landmarks"], landmark("femur.linea_aspera")],
    )


def _artery_of_the_thigh() -> Catalogue:
    femoral = Artery(id="femoral_artery", name="femoral artery")
    row = replace(brachialis().arteries[0], artery="femoral_artery")
    return tiny(
        arteries=[*tables()["arteries"], femoral], muscles=[biceps(), replace(brachialis(), arteries=(row,))]
    )


def _nothing_but_an_artery() -> Catalogue:
    barred = (
        HouseRule(fact=f"{muscle}/artery/-/brachial_artery", ruling="bar")
        for muscle in ("biceps_brachii", "brachialis")
    )
    return with_changed("courses", "arm", families=("artery",), house_rules=tuple(barred))


def _level(name: str = "elbow", **fields: Any) -> Level:
    given: dict[str, Any] = {"nerve": "musculocutaneous_nerve", "order": 2, "sources": CITED} | fields
    return Level(id=name, name=f"at the {name}", **given)


BREACHES: dict[str, Breach] = {
    "every_level_lies_on_a_known_nerve": lambda: with_added("levels", _level(nerve="radial")),
    "levels_spare_what_their_nerve_reaches": lambda: with_added("levels", _level(spares=("bicep_brachii",))),
    "distal_levels_spare_more": lambda: tiny(
        levels=[_level("axilla", order=1, spares=("brachialis",)), _level()]
    ),
    "every_site_is_known": _brachialis(insertions=(at("ulna.tuberositas"),)),
    "every_nerve_is_known": _brachialis(nerves=(replace(SUPPLY, nerve="musculocutanous_nerve"),)),
    "every_artery_is_known": lambda: with_added("arteries", Artery(id="x", name="x", parent="brachial")),
    "every_joint_and_movement_is_known": _brachialis(actions=(act("elbow", "flexing"),)),
    "every_bone_is_known": lambda: with_added(
        "landmarks", landmark("humerus.head", bones=("humerus", "hum"))
    ),
    "every_related_landmark_is_known": lambda: with_changed(
        "landmarks", "ulna.tuberosity", homologues=("radius.tuber",)
    ),
    "every_region_and_compartment_is_known": _brachialis(compartment="arm_anterioor"),
    "every_part_is_known": _biceps(actions=(act("elbow", "flexion", part="middle_head"),)),
    "lookalikes_resolve": lambda: with_changed(
        "lookalikes", "coracoid_and_coronoid", members=("scapula.coracoid_process",)
    ),
    "every_fact_has_a_source": _brachialis(actions=(replace(act("elbow", "flexion"), sources=()),)),
    "every_source_is_known": _brachialis(sources=("grey",)),
    "every_source_is_used": lambda: with_added(
        "sources", Source(id="gray", title="Gray", access="from memory")
    ),
    "every_part_has_origin_and_insertion": _biceps(origins=(at("scapula.coracoid_process", "short_head"),)),
    "every_muscle_has_an_action": _brachialis(actions=()),
    "every_muscle_has_a_nerve": _biceps(nerves=(replace(SUPPLY, part="long_head"),)),
    "every_muscle_has_an_artery": _brachialis(arteries=()),
    "every_fact_is_given_once": _brachialis(
        insertions=(at("ulna.tuberosity"), at("ulna.tuberosity", detail="x"))
    ),
    "every_action_joint_is_crossed": _brachialis(actions=(act("shoulder", "flexion"),)),
    "joint_allows_the_movement": _brachialis(actions=(act("elbow", "supination"),)),
    "shortest_way_is_one": _two_equal_ways,
    "contested_facts_are_explained": _brachialis(differ=()),
    "every_difference_has_a_topic": _biceps(differ=(Difference(about="nervs", text="x", sources=CITED),)),
    "roots_are_segments": _brachialis(nerves=(replace(SUPPLY, roots=("C9",), main=()),)),
    "roots_lie_within_the_nerve": _brachialis(nerves=(replace(SUPPLY, roots=("C5", "C8"), main=()),)),
    "main_roots_lie_within_the_roots": _brachialis(nerves=(replace(SUPPLY, main=("C7",)),)),
    "roots_come_from_the_parents": lambda: with_added("nerves", nerve("n", "nerve", ("C8",), ("c5",))),
    "nerve_tree_has_no_circle": lambda: with_changed(
        "nerves", "upper_trunk", parents=("musculocutaneous_nerve",)
    ),
    "artery_tree_has_no_circle": lambda: with_changed(
        "arteries", "axillary_artery", parent="brachial_artery"
    ),
    "an_artery_reaches_its_region": _artery_of_the_thigh,
    "no_exact_name_means_two_things": _biceps(names=(Name(term="Brachialis muscle", kind="synonym"),)),
    "every_id_means_one_thing": lambda: with_added("nerves", nerve("humerus", "nerve", ())),
    "ids_are_never_reused": lambda: tiny(retired={"muscles": ("brachialis",)}),
    "retired_tables_exist": lambda: tiny(retired={"index": ()}),
    "antagonism_is_symmetric": lambda: with_changed("movements", "flexion", antagonist="supination"),
    "landmarks_lie_on_bones": lambda: with_changed("landmarks", "ulna.tuberosity", bones=("radius",)),
    "no_orphan_landmark": _far_landmark,
    "file_name_is_the_id": _brachialis(name="brachialis anticus"),
    "region_folder_matches": lambda: tiny(files={("muscles", "brachialis"): "muscles/leg/brachialis.toml"}),
    "course_muscles_exist": _course(muscles=("biceps_brachi", "brachialis")),
    "course_families_exist": _course(families=("origins",)),
    "course_families_have_facts": _nothing_but_an_artery,
    "course_is_not_empty": _course(muscles=()),
    "house_rules_name_facts": _course(
        house_rules=(HouseRule(fact="brachialis/nerve/-/radial", ruling="key"),)
    ),
    "preferred_terms_are_known": _course(preferred=(("brachialis", "brachialus"),)),
}
"""By rule name. Further ways of breaking a rule stand below it in `MORE_BREACHES`."""

MORE_BREACHES: tuple[tuple[str, Breach], ...] = (
    ("every_nerve_is_known", lambda: with_added("nerves", nerve("n", "nerve", (), ("c4",)))),
    ("every_artery_is_known", lambda: with_changed("regions", "arm", arteries=("brachial",))),
    ("an_artery_reaches_its_region", lambda: with_changed("regions", "arm", arteries=())),
    ("every_artery_is_known", _brachialis(arteries=(replace(brachialis().arteries[0], artery="brachal"),))),
    ("every_joint_and_movement_is_known", _brachialis(actions=(act("elbo", "flexion"),))),
    ("every_joint_and_movement_is_known", lambda: with_changed("joints", "elbow", movements=("flexing",))),
    ("every_bone_is_known", lambda: with_changed("joints", "elbow", links=(("humerus", "ulnna"),))),
    (
        "every_related_landmark_is_known",
        lambda: with_changed("landmarks", "ulna.tuberosity", within=("ulna.x",)),
    ),
    ("every_region_and_compartment_is_known", _brachialis(region="arms")),
    (
        "lookalikes_resolve",
        lambda: with_added(
            "lookalikes", LookAlike(id="x", kind="nerve", members=("c5", "ulna"), tell="x", sources=CITED)
        ),
    ),
    ("every_fact_has_a_source", lambda: with_changed("lookalikes", "coracoid_and_coronoid", sources=())),
    ("every_fact_has_a_source", _brachialis(differ=(Difference(about="nerves", text="x", sources=()),))),
    (
        "every_part_has_origin_and_insertion",
        _brachialis(insertions=(at("ulna.tuberosity", status="variant"),)),
    ),
    (
        "every_part_has_origin_and_insertion",
        _biceps(parts=(*biceps().parts, Part(id="third", name="third head"))),
    ),
    ("antagonism_is_symmetric", lambda: with_changed("joints", "elbow", movements=("flexion",))),
    ("antagonism_is_symmetric", lambda: with_added("movements", movement("nutation", "nutation"))),
    ("landmarks_lie_on_bones", lambda: with_changed("landmarks", "humerus.shaft", within=("humerus.shaft",))),
    ("course_muscles_exist", _course(separate_parts=("trapezius",))),
    ("course_families_have_facts", _course(families=("odd_one_out",))),
    ("course_families_have_facts", _course(families=("antagonist",))),
    (
        "course_families_have_facts",
        lambda: tiny(
            muscles=[
                replace(biceps(), nerves=(replace(SUPPLY, roots=(), main=()),)),
                replace(brachialis(), nerves=(replace(SUPPLY, roots=(), main=()),)),
            ],
            courses=[replace(tables()["courses"][0], families=("root",))],
        ),
    ),
    ("course_is_not_empty", _course(families=("origin", "origin"))),
    (
        "course_is_not_empty",
        lambda: with_added("courses", Course(id="c", title="c", muscles=("x",), families=())),
    ),
    ("preferred_terms_are_known", _course(abbreviations=("BB",))),
    ("preferred_terms_are_known", _course(preferred=(("brachials", "brachialis"),))),
)
