"""Ways over the graph of bones, held against plain enumeration of all ways."""

from collections.abc import Iterator

from hypothesis import given, settings
from hypothesis import strategies as st

from quizroom.knowledge.bone_graph import (
    build_graph,
    joints_on_any_way,
    joints_on_shortest_way,
    steps_from,
    ways_part,
)
from quizroom.knowledge.model import Joint
from tests.knowledge.entries import joint

BONES = "abcdefg"
links = st.tuples(st.sampled_from(BONES), st.sampled_from(BONES)).filter(lambda link: link[0] != link[1])
skeletons = st.lists(links, min_size=1, max_size=12).map(
    lambda pairs: [joint(f"j{number}", (pair,), (), number) for number, pair in enumerate(pairs)]
)
bones = st.sampled_from(BONES)


def all_ways(
    joints: list[Joint], start: str, end: str, seen: tuple[str, ...] = ()
) -> Iterator[tuple[str, ...]]:
    """Every way that visits no bone twice, as the joints on it; an oracle with no cleverness."""
    if start == end:
        yield ()
        return
    for one in joints:
        for link in one.links:
            if start in link:
                (other,) = set(link) - {start}
                if other not in (*seen, start):
                    for rest in all_ways(joints, other, end, (*seen, start)):
                        yield (one.id, *rest)


@settings(deadline=None)  # the plain enumeration of all ways may take long
@given(skeletons, bones, bones)
def test_any_way_means_every_way_that_visits_no_bone_twice(joints: list[Joint], start: str, end: str) -> None:
    expected = {name for way in all_ways(joints, start, end) for name in way}
    assert joints_on_any_way(build_graph(joints), start, end) == expected


@settings(deadline=None)  # the plain enumeration of all ways may take long
@given(skeletons, bones, bones)
def test_the_shortest_way_is_the_shortest_of_all_ways(joints: list[Joint], start: str, end: str) -> None:
    ways = list(all_ways(joints, start, end))
    least = min((len(way) for way in ways), default=0)
    expected = {name for way in ways if len(way) == least for name in way}
    assert joints_on_shortest_way(build_graph(joints), start, end) == expected


@settings(deadline=None)  # the plain enumeration of all ways may take long
@given(skeletons, bones, bones)
def test_ways_part_only_if_equally_short_ways_cross_different_joints(
    joints: list[Joint], start: str, end: str
) -> None:
    one_each = list({frozenset(one.links[0]): one for one in joints}.values())  # no two joints share a pair
    ways = list(all_ways(one_each, start, end))
    least = min((len(way) for way in ways), default=0)
    shortest = {frozenset(way) for way in ways if len(way) == least}
    assert ways_part(build_graph(one_each), start, end) == (len(shortest) > 1)


@settings(deadline=None)  # the plain enumeration of all ways may take long
@given(skeletons, bones, bones)
def test_the_way_back_crosses_the_same_joints(joints: list[Joint], start: str, end: str) -> None:
    graph = build_graph(joints)
    assert joints_on_shortest_way(graph, start, end) == joints_on_shortest_way(graph, end, start)
    assert joints_on_shortest_way(graph, start, end) <= joints_on_any_way(graph, start, end)


@settings(deadline=None)  # the plain enumeration of all ways may take long
@given(skeletons, bones)
def test_steps_are_counted_from_the_start(joints: list[Joint], start: str) -> None:
    graph = build_graph(joints)
    assert all(
        steps_from(graph, start)[bone] == min(map(len, all_ways(joints, start, bone)))
        for bone in steps_from(graph, start)
    )


def test_joints_within_a_series_count_when_it_is_passed_through() -> None:
    spine = joint("spine", (("vertebrae", "vertebrae"), ("skull", "vertebrae"), ("vertebrae", "ribs")), (), 1)
    graph = build_graph([joint("nod", (("skull", "vertebrae"),), (), 0), spine])
    assert joints_on_shortest_way(graph, "vertebrae", "vertebrae") == {"spine"}
    assert joints_on_shortest_way(graph, "skull", "ribs") == {"nod", "spine"}
