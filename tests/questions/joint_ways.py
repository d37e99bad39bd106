"""The oracle's own ways over the joints: the shortest, and all simple ways, between two bones."""

from collections.abc import Iterator
from functools import cache
from itertools import product

from tests.questions.source_text import Text


def joints_surely_crossed(text: Text, holder: str) -> set[str]:
    """Joints on a shortest way between core attachments."""
    return {joint for pair in _ends(text, holder, ("core",)) for joint in _on_shortest_ways(text, *pair)}


def joints_that_may_be_crossed(text: Text, holder: str) -> set[str]:
    """Joints on any way between attachments of any status."""
    pairs = _ends(text, holder, ("core", "variant", "minority"))
    return {joint for pair in pairs for joint in _on_any_ways(text, *pair)}


@cache
def _beside(text: Text) -> dict[str, set[str]]:
    """The neighbours of each bone."""
    beside: dict[str, set[str]] = {}
    for row in text.joints.values():
        for one, other in row["links"]:
            beside.setdefault(one, set()).add(other)
            beside.setdefault(other, set()).add(one)
    return {bone: others - {bone} for bone, others in beside.items()}


def _within_reach(text: Text, start: str, without: str = "") -> dict[str, int]:
    """Steps to each bone that can be reached, with one bone taken out."""
    steps = {start: 0}
    waiting = [start]
    for bone in waiting:
        for other in _beside(text).get(bone, set()) - steps.keys() - {without}:
            steps[other] = steps[bone] + 1
            waiting.append(other)
    return steps


@cache
def _on_shortest_ways(text: Text, start: str, end: str) -> set[str]:
    there, back = _within_reach(text, start), _within_reach(text, end)
    length = there.get(end)
    way = {bone for bone in there if bone in back and there[bone] + back[bone] == length}
    steps = {
        frozenset((one, other)) for one in way for other in way if there[one] + 1 + back[other] == length
    }
    return _joints_of(text, steps, way - {start, end} if start != end else {start})


@cache
def _on_any_ways(text: Text, start: str, end: str) -> set[str]:
    """A step lies on a way that meets no bone twice unless a single bone cuts it off from start and end."""
    bones = set(_within_reach(text, start)) if start in _beside(text) else {start}
    for bone in sorted(_single_gates(text)):
        ends = {one for one in (start, end) if one != bone}
        bones &= {bone}.union(*(_component(text, bone, one) for one in ends))
    steps = {frozenset((one, other)) for one in bones for other in bones & _beside(text).get(one, set())}
    return _joints_of(text, steps, bones) if start != end else _joints_of(text, set(), {start})


@cache
def _single_gates(text: Text) -> frozenset[str]:
    """The bones without which the others fall apart."""
    return frozenset(
        bone
        for bone, others in _beside(text).items()
        if any(other not in _component(text, bone, min(others)) for other in others)
    )


@cache
def _component(text: Text, without: str, start: str) -> frozenset[str]:
    return frozenset(_within_reach(text, start, without))


def _joints_of(text: Text, steps: set[frozenset[str]], bones: set[str]) -> set[str]:
    """The joints of the steps, and within a series among the bones."""
    wanted = steps | {frozenset((bone,)) for bone in bones}
    return {joint for joint, link in _links(text) if link in wanted}


@cache
def _links(text: Text) -> tuple[tuple[str, frozenset[str]], ...]:
    return tuple((joint, frozenset(pair)) for joint, row in text.joints.items() for pair in row["links"])


def _ends(text: Text, holder: str, statuses: tuple[str, ...]) -> Iterator[tuple[str, str]]:
    """Bones of origin with bones of insertion, part by part: no part runs from another's origin."""
    muscle, _, part = holder.partition("/")
    parts = [part] if part else [row["id"] for row in text.muscles[muscle].get("parts", [])] or [""]
    for one in parts:
        bones = [
            {
                bone
                for row in text.by_muscle.get((table, muscle), ())
                if row.part in ("", one) and row.status in statuses
                for bone in text.landmarks[row.value]["bones"]
            }
            for table in ("origins", "insertions")
        ]
        yield from product(*bones)
