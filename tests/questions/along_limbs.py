"""The oracle's own view of what lies distal to what."""

from collections.abc import Iterator
from itertools import pairwise

from tests.questions.source_text import Table, Text

CARPUS = ("scaphoid", "lunate", "triquetrum", "pisiform", "trapezium", "trapezoid", "capitate", "hamate")
TARSUS = ("talus", "calcaneus", "navicular", "cuboid", "medial_cuneiform", "intermediate_cuneiform")
LEVELS = {
    "humerus": ("arm", 0),
    "ulna": ("arm", 1),
    "radius": ("arm", 1),
    "femur": ("leg", 0),
    "tibia": ("leg", 1),
    "fibula": ("leg", 1),
    "lateral_cuneiform": ("leg", 2),
    **dict.fromkeys(CARPUS, ("arm", 2)),
    **dict.fromkeys(TARSUS, ("leg", 2)),
}
ROWS = {"metacarpal": ("arm", 3), "metatarsal": ("leg", 3)}
PHALANGES = {"proximal": 4, "middle": 5, "distal": 6}
NARROW = ("tuberosity", "tubercle", "process")


def is_proximal_to(near: Table, far: Table) -> bool:
    """Whether all of one place lies proximal to all of another, on every bone of both."""
    return all(
        _bone_before(one, near, other, far) for one in near["bones"] or [""] for other in far["bones"] or [""]
    )


def joints_in_turn(text: Text, start: str, end: str, joints: list[str]) -> bool:
    """Whether every shortest way between two bones passes these joints one after another."""
    ways = list(_shortest_ways(text, start, end))
    return bool(ways) and all(_in_turn(text, way, joints) for way in ways)


def _bone_before(one: str, near: Table, other: str, far: Table) -> bool:
    here, there = _level(one), _level(other)
    if here is None or there is None or here[0] != there[0]:
        return False
    steps = there[1] - here[1]
    if steps == 0:
        return _place_before(near, far)
    touches = near.get("position", "") in ("distal", "") and far.get("position", "") in ("proximal", "")
    return steps > 1 or (steps == 1 and not touches)


def _place_before(near: Table, far: Table) -> bool:
    """On one bone: end before end, or an end and a narrow place on the shaft."""
    places = near.get("position", ""), far.get("position", "")
    narrow = {"proximal": near, "distal": far}
    if places == ("proximal", "distal"):
        return True
    if places == ("proximal", "shaft"):
        return far["kind"] in NARROW
    return places == ("shaft", "distal") and near["kind"] in NARROW and narrow["distal"] is far


def _level(bone: str) -> tuple[str, int] | None:
    """How far along which limb; nothing for thumb, great toe, and all that is not on a limb."""
    if bone in LEVELS:
        return LEVELS[bone]
    words = bone.split("_")
    if bone.endswith(("_1", "great_toe")):
        return None
    if words[0] in ROWS:
        return ROWS[words[0]]
    if len(words) > 2 and words[1] == "phalanx":
        return "leg" if bone.endswith("_toe") else "arm", PHALANGES[words[0]]
    return None


def _shortest_ways(text: Text, start: str, end: str) -> Iterator[tuple[str, ...]]:
    ways: list[tuple[str, ...]] = [(start,)]
    seen = {start}
    while ways and not any(way[-1] == end for way in ways):
        ways = [(*way, bone) for way in ways for bone in _beside(text, way[-1]) - seen]
        seen |= {way[-1] for way in ways}
    yield from (way for way in ways if way[-1] == end)


def _beside(text: Text, bone: str) -> set[str]:
    links = (pair for row in text.joints.values() for pair in row["links"] if bone in pair)
    return {one for pair in links for one in pair} - {bone}


def _in_turn(text: Text, way: tuple[str, ...], joints: list[str]) -> bool:
    steps = [
        {
            joint
            for joint, row in text.joints.items()
            if any(set(pair) == {one, other} for pair in row["links"])
        }
        for one, other in pairwise(way)
    ]
    places = [[place for place, step in enumerate(steps) if joint in step] for joint in joints]
    return all(places) and all(max(one) < min(other) for one, other in pairwise(places))
