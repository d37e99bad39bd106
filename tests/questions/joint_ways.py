"""The oracle's own ways over the joints: all simple ways, and the shortest, between two bones."""

from collections.abc import Iterator
from functools import cache
from itertools import pairwise, product

from tests.questions.source_text import Text

Way = tuple[str, ...]


def joints_surely_crossed(text: Text, holder: str) -> set[str]:
    """Joints on a shortest way between core attachments."""
    pairs = _ends(text, holder, {"core"})
    return {joint for start, end in pairs for joint in _between(_Joints(text), start, end)[0]}


def joints_that_may_be_crossed(text: Text, holder: str) -> set[str]:
    """Joints on any way between attachments of any status."""
    pairs = _ends(text, holder, {"core", "variant", "minority"})
    return {joint for start, end in pairs for joint in _between(_Joints(text), start, end)[1]}


class _Joints:
    """The neighbours of bones; the same for the same text, so that ways are found once."""

    def __init__(self, text: Text) -> None:
        self.text = text

    def __hash__(self) -> int:
        return id(self.text)

    def __eq__(self, other: object) -> bool:
        return isinstance(other, _Joints) and other.text is self.text

    def beside(self, bone: str) -> Iterator[str]:
        pairs = (pair for row in self.text.joints.values() for pair in row["links"] if bone in pair)
        yield from sorted({one for pair in pairs for one in pair} - {bone})


@cache
def _between(joints: _Joints, start: str, end: str) -> tuple[set[str], set[str]]:
    """The joints on the shortest ways between two bones, and those on any way."""
    ways = list(_ways(joints, start, end))
    shortest = min((len(way) for way in ways), default=0)
    near = {joint for way in ways if len(way) == shortest for joint in _way_joints(joints.text, way)}
    return near, {joint for way in ways for joint in _way_joints(joints.text, way)}


def _way_joints(text: Text, way: Way) -> set[str]:
    """The joints between the bones of a way one after another, and within a series on it."""
    steps = {frozenset(pair) for pair in pairwise(way)} | {frozenset((bone,)) for bone in way}
    links = ((joint, frozenset(pair)) for joint, row in text.joints.items() for pair in row["links"])
    return {joint for joint, link in links if link in steps}


def _ways(joints: _Joints, start: str, end: str) -> Iterator[Way]:
    """All ways from bone to bone that meet no bone twice."""
    waiting: list[Way] = [(start,)]
    while waiting:
        way = waiting.pop()
        if way[-1] == end:
            yield way
        else:
            waiting += [(*way, bone) for bone in joints.beside(way[-1]) if bone not in way]


def _ends(text: Text, holder: str, statuses: set[str]) -> set[tuple[str, str]]:
    """Bones of origin with bones of insertion, part by part: no part runs from another's origin."""
    muscle, _, part = holder.partition("/")
    parts = [part] if part else [row["id"] for row in text.muscles[muscle].get("parts", [])] or [""]
    pairs: set[tuple[str, str]] = set()
    for one in parts:
        bones = [
            {
                bone
                for row in text.rows[table]
                if row.muscle == muscle and row.part in ("", one) and row.status in statuses
                for bone in text.landmarks[row.value]["bones"]
            }
            for table in ("origins", "insertions")
        ]
        pairs |= set(product(*bones))
    return pairs
