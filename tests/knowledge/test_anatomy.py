"""Reasoning over the tiny knowledge base."""

from hypothesis import given
from hypothesis import strategies as st

from quizroom.knowledge.anatomy import (
    antagonist,
    artery_ancestors,
    artery_descendants,
    artery_path,
    attachments_at,
    attachments_on_bone,
    attachments_touching,
    joints_crossed,
    joints_possibly_crossed,
    joints_recorded,
    movers,
    muscles_of_artery,
    muscles_of_nerve,
    nerve_ancestors,
    nerve_descendants,
    nerve_path,
    parts_crossing,
    prime_movers,
    short_nerve_path,
    sites_overlap,
)
from quizroom.knowledge.index import closure, turned_round
from quizroom.knowledge.model import Part
from tests.knowledge.entries import act, at, joint
from tests.knowledge.tiny import biceps, tables, tiny, with_changed

ROOTS_5_7 = "C5\N{EN DASH}C7"


def test_the_joints_between_origin_and_insertion_are_crossed() -> None:
    assert joints_crossed(tiny(), "brachialis") == ("elbow",)
    assert joints_crossed(tiny(), "biceps_brachii") == ("shoulder", "elbow", "radioulnar")
    assert joints_crossed(tiny(), "biceps_brachii", "long_head") == ("shoulder", "elbow", "radioulnar")


def test_each_part_crosses_by_its_own_attachments_and_those_of_the_whole() -> None:
    origins = (at("scapula.coracoid_process", "long_head"), at("humerus.shaft", "short_head"))
    catalogue = with_changed("muscles", "biceps_brachii", origins=origins)
    assert joints_crossed(catalogue, "biceps_brachii", "short_head") == ("elbow", "radioulnar")
    assert parts_crossing(catalogue, "biceps_brachii", "shoulder") == ("long_head",)
    assert joints_crossed(catalogue, "biceps_brachii") == ("shoulder", "elbow", "radioulnar")


def test_a_variant_attachment_crosses_only_by_record() -> None:
    origins = (at("humerus.shaft"), at("scapula.coracoid_process", status="variant"))
    catalogue = with_changed("muscles", "brachialis", origins=origins)
    assert joints_crossed(catalogue, "brachialis") == ("elbow",)
    assert joints_recorded(catalogue, "brachialis") == ("shoulder", "elbow")
    assert joints_possibly_crossed(catalogue, "brachialis") == ("shoulder", "elbow")


def test_a_ring_of_bones_makes_other_joints_possible() -> None:
    ring = [
        *tables()["joints"],
        joint("humeroradial", (("humerus", "radius"),), ("flexion", "extension"), 9),
    ]
    catalogue = tiny(joints=ring)
    assert joints_crossed(catalogue, "brachialis") == ("elbow",)
    assert joints_possibly_crossed(catalogue, "brachialis") == ("elbow", "radioulnar", "humeroradial")


def test_the_nerve_path_runs_from_roots_to_nerve() -> None:
    path = nerve_path(tiny(), "musculocutaneous_nerve")
    assert [step.name for step in path] == [
        ROOTS_5_7,
        "upper and middle trunks",
        "lateral cord",
        "musculocutaneous nerve",
    ]
    assert path[1].ids == ("upper_trunk", "middle_trunk")


def test_the_path_of_some_roots_leaves_out_what_they_do_not_pass() -> None:
    path = nerve_path(tiny(), "musculocutaneous_nerve", ("C5", "C6"))
    assert [step.name for step in path] == [
        "C5\N{EN DASH}C6",
        "upper trunk",
        "lateral cord",
        "musculocutaneous nerve",
    ]


def test_the_short_path_leaves_out_trunks_where_there_is_a_cord() -> None:
    short = short_nerve_path(tiny(), "musculocutaneous_nerve")
    assert [step.name for step in short] == [ROOTS_5_7, "lateral cord", "musculocutaneous nerve"]
    assert short_nerve_path(tiny(), "radial_nerve") == nerve_path(tiny(), "radial_nerve")


def test_a_branch_comes_after_its_nerve() -> None:
    names = [step.name for step in nerve_path(tiny(), "posterior_interosseous_nerve")]
    assert names == ["C7", "middle trunk", "radial nerve", "posterior interosseous nerve"]


def test_nerves_know_what_is_above_and_below_them() -> None:
    assert nerve_ancestors(tiny(), "lateral_cord") == {"upper_trunk", "middle_trunk", "c5", "c6", "c7"}
    assert nerve_descendants(tiny(), "radial_nerve") == {"posterior_interosseous_nerve"}
    assert nerve_descendants(tiny(), "posterior_interosseous_nerve") == frozenset()


def test_a_nerve_reaches_the_muscles_of_its_branches() -> None:
    assert muscles_of_nerve(tiny(), "lateral_cord") == ("biceps_brachii", "brachialis")
    assert muscles_of_nerve(tiny(), "radial_nerve") == ()
    assert muscles_of_nerve(tiny(), "radial_nerve", ("core", "variant")) == ("brachialis",)


def test_arteries_form_a_path() -> None:
    assert artery_path(tiny(), "brachial_artery") == ("axillary_artery", "brachial_artery")
    assert artery_ancestors(tiny(), "brachial_artery") == {"axillary_artery"}
    assert artery_descendants(tiny(), "axillary_artery") == {"brachial_artery"}
    assert muscles_of_artery(tiny(), "axillary_artery") == ("biceps_brachii", "brachialis")


def test_movers_are_told_apart_from_prime_movers() -> None:
    catalogue = with_changed("muscles", "biceps_brachii", actions=(act("elbow", "flexion", "assistant"),))
    assert [fact.muscle for fact in movers(catalogue, "elbow", "flexion")] == ["biceps_brachii", "brachialis"]
    assert [fact.muscle for fact in prime_movers(catalogue, "elbow", "flexion")] == ["brachialis"]
    assert antagonist(catalogue, "flexion") == "extension"


def test_an_attachment_on_a_part_is_one_on_the_whole() -> None:
    assert [fact.muscle for fact in attachments_at(tiny(), "humerus.shaft")] == ["brachialis"]
    assert [fact.muscle for fact in attachments_at(tiny(), "ulna.tuberosity", ("variant",))] == []


def test_an_attachment_on_the_whole_may_be_one_on_the_part() -> None:
    catalogue = with_changed("muscles", "brachialis", origins=(at("humerus.shaft"),))
    assert attachments_at(catalogue, "humerus.anterior_surface") == ()
    touching = attachments_touching(catalogue, "humerus.anterior_surface")
    assert [fact.muscle for fact in touching] == ["brachialis"]


def test_attachments_are_found_by_bone() -> None:
    assert {fact.muscle for fact in attachments_on_bone(tiny(), "ulna")} == {"brachialis"}


def test_whole_and_part_overlap_and_neighbours_do_not() -> None:
    assert sites_overlap(tiny(), "humerus.shaft", "humerus.anterior_surface")
    assert sites_overlap(tiny(), "humerus.anterior_surface", "humerus.shaft")
    assert not sites_overlap(tiny(), "ulna.tuberosity", "ulna.coronoid_process")


def test_a_muscle_with_a_part_that_attaches_nowhere_crosses_nothing_by_it() -> None:
    parts = (*biceps().parts, Part(id="third", name="third head"))
    origins = biceps().origins
    catalogue = with_changed("muscles", "biceps_brachii", parts=parts, origins=origins)
    assert joints_crossed(catalogue, "biceps_brachii", "third") == ()


trees = st.dictionaries(st.sampled_from("abcdef"), st.sets(st.sampled_from("abcdef")).map(tuple), max_size=6)


@given(trees)
def test_above_is_closed_and_below_is_its_mirror(parents: dict[str, tuple[str, ...]]) -> None:
    above = closure(parents)
    for start, ancestors in above.items():
        assert set(parents[start]) <= ancestors
        assert all(set(parents.get(one, ())) <= ancestors for one in ancestors)
    below = turned_round(above)
    assert {(one, top) for one in above for top in above[one]} == {
        (one, top) for top in below for one in below[top]
    }
