"""Nerves and arteries of the tiny knowledge base, and trees of any shape."""

from hypothesis import given
from hypothesis import strategies as st

from quizroom.knowledge.anatomy import (
    artery_ancestors,
    artery_descendants,
    artery_path,
    muscles_of_artery,
    muscles_of_nerve,
    nerve_ancestors,
    nerve_descendants,
    nerve_path,
    short_nerve_path,
)
from quizroom.knowledge.index import closure, turned_round
from tests.knowledge.entries import nerve
from tests.knowledge.tiny import tiny, with_added

ROOTS_5_7 = "C5\N{EN DASH}C7"


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


def test_a_cranial_nerve_without_segments_is_told_from_its_trunk() -> None:
    # common practice, no source: the facial nerve reaches the face through the parotid plexus
    facial = nerve("facial_nerve", "nerve", ())
    plexus = nerve("parotid_plexus", "plexus", (), ("facial_nerve",))
    branches = nerve("buccal_branches", "branch", (), ("parotid_plexus",))
    names = [
        step.name for step in nerve_path(with_added("nerves", facial, plexus, branches), "buccal_branches")
    ]
    assert names == ["facial nerve", "parotid plexus", "buccal branches"]


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
