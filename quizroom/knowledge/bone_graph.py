"""The bones as a graph whose edges are joints, and the ways a muscle may take over it.

A muscle crosses the joints that lie on the shortest way from the bone it arises from to the
bone it inserts on. Where the shoulder girdle or the wrist close a ring, other ways exist; the
joints on those are *possibly* crossed, and no question may call them wrong.
"""

from collections import deque
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from quizroom.knowledge.model import Joint

Edge = frozenset[str]


@dataclass(frozen=True, slots=True)
class BoneGraph:
    """`neighbours` of each bone; the `joints` of each edge; the `block` each edge lies in.

    A block is a set of edges of which any two lie on one ring, or a single edge that is a bridge.
    `within` are the joints inside a series of bones that is taken as one, such as the vertebrae.
    """

    neighbours: Mapping[str, tuple[str, ...]]
    joints: Mapping[Edge, frozenset[str]]
    block: Mapping[Edge, frozenset[Edge]]
    within: Mapping[str, frozenset[str]]
    steps: Mapping[str, Mapping[str, int]]


def build_graph(joints: Iterable[Joint]) -> BoneGraph:
    """The graph over all links of the joints; a link of a series to itself is a joint within it."""
    between: dict[Edge, frozenset[str]] = {}
    within: dict[str, frozenset[str]] = {}
    neighbours: dict[str, tuple[str, ...]] = {}
    for joint in joints:
        for one, other in joint.links:
            if one == other:
                within[one] = within.get(one, frozenset()) | {joint.id}
                continue
            edge = frozenset((one, other))
            if edge not in between:
                neighbours[one] = (*neighbours.get(one, ()), other)
                neighbours[other] = (*neighbours.get(other, ()), one)
            between[edge] = between.get(edge, frozenset()) | {joint.id}
    steps = {bone: _steps_from(neighbours, bone) for bone in neighbours}
    return BoneGraph(neighbours, between, _blocks(neighbours), within, steps)


def steps_from(graph: BoneGraph, start: str) -> Mapping[str, int]:
    """How many joints away each bone is that can be reached from `start`."""
    return graph.steps.get(start, {start: 0})


def _steps_from(neighbours: Mapping[str, tuple[str, ...]], start: str) -> dict[str, int]:
    steps = {start: 0}
    waiting = deque([start])
    while waiting:
        bone = waiting.popleft()
        for neighbour in neighbours[bone]:
            if neighbour not in steps:
                steps[neighbour] = steps[bone] + 1
                waiting.append(neighbour)
    return steps


def shortest_way(graph: BoneGraph, start: str, end: str) -> frozenset[Edge]:
    """The edges of all shortest ways between two bones; empty if there is none or they are one."""
    there, back = steps_from(graph, start), steps_from(graph, end)
    if end not in there:
        return frozenset()
    return frozenset(
        frozenset((bone, neighbour))
        for bone, steps in there.items()
        if steps < there[end]
        for neighbour in graph.neighbours[bone]
        if neighbour in back and steps + 1 + back[neighbour] == there[end]
    )


def ways_part(graph: BoneGraph, start: str, end: str) -> bool:
    """Whether two equally short ways between the bones cross different joints."""
    bone, one_way = start, list[Edge]()
    steps = steps_from(graph, end)
    while steps.get(bone):
        nearer = next(one for one in graph.neighbours[bone] if steps[one] < steps[bone])
        one_way.append(frozenset((bone, nearer)))
        bone = nearer
    return _joints(graph, one_way, ()) != _joints(graph, shortest_way(graph, start, end), ())


def joints_on_shortest_way(graph: BoneGraph, start: str, end: str) -> frozenset[str]:
    """The joints between two bones by the shortest way, with those inside a series passed through."""
    way = shortest_way(graph, start, end)
    between = frozenset(bone for edge in way for bone in edge) - {start, end}
    inside = {start} if start == end else between
    return _joints(graph, way, inside)


def joints_on_any_way(graph: BoneGraph, start: str, end: str) -> frozenset[str]:
    """The joints on any way between two bones that visits no bone twice.

    An edge lies on such a way exactly if it shares a block with an edge of the shortest one.
    """
    edges = frozenset(edge for step in shortest_way(graph, start, end) for edge in graph.block[step])
    return _joints(graph, edges, {start, end}.union(*edges))


def _joints(graph: BoneGraph, edges: Iterable[Edge], series: Iterable[str]) -> frozenset[str]:
    between = (graph.joints[edge] for edge in edges)
    within = (graph.within.get(bone, frozenset()) for bone in series)
    return frozenset[str]().union(*between, *within)


def _blocks(neighbours: Mapping[str, tuple[str, ...]]) -> dict[Edge, frozenset[Edge]]:
    """The block of every edge, by one walk in depth with low points (Hopcroft and Tarjan 1973)."""
    found: dict[str, int] = {}
    block: dict[Edge, frozenset[Edge]] = {}
    open_edges: list[Edge] = []

    def walk(bone: str, parent: str) -> int:
        low = found[bone] = len(found)
        for neighbour in neighbours[bone]:
            edge = frozenset((bone, neighbour))
            if neighbour == parent:
                continue
            if neighbour in found:
                if found[neighbour] < found[bone]:
                    open_edges.append(edge)
                low = min(low, found[neighbour])
                continue
            height = len(open_edges)
            open_edges.append(edge)
            below = walk(neighbour, bone)
            low = min(low, below)
            if below >= found[bone]:
                closed = frozenset(open_edges[height:])
                del open_edges[height:]
                block.update(dict.fromkeys(closed, closed))
        return low

    for bone in neighbours:
        if bone not in found:
            walk(bone, "")
    return block
