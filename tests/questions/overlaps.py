"""The oracle's own view of what may be meant by one another: places, nerves, arteries, movements."""

import re
from functools import cache

from tests.questions.source_text import Table, Text

GROUPS_OF_JOINTS = [
    {"sternoclavicular", "acromioclavicular", "scapulothoracic"},
    {"wrist", "intercarpal_joints"},
    {"costovertebral_joints", "sternocostal_joints"},
]
SAME_MOVEMENT = {
    frozenset(pair)
    for pair in (
        ("horizontal_adduction", "adduction"),
        ("horizontal_adduction", "flexion"),
        ("horizontal_abduction", "abduction"),
        ("horizontal_abduction", "extension"),
        ("radial_deviation", "abduction"),
        ("ulnar_deviation", "adduction"),
        ("opposition", "flexion"),
        ("reposition", "extension"),
        ("protraction", "abduction"),
        ("retraction", "adduction"),
    )
}


SERIES = {"ribs", "atlas", "cervical_vertebrae", "thoracic_vertebrae", "lumbar_vertebrae"}
UPWARD = {"nerves": "parents", "arteries": "parent", "landmarks": "within"}
"""By table the key that names what an entry comes from or lies in."""
SEGMENTS = [
    f"{letter}{number}"
    for letter, last in (("C", 8), ("T", 12), ("L", 5), ("S", 5))
    for number in range(1, last + 1)
]


@cache
def all_above(text: Text, table: str, start: str) -> frozenset[str]:
    """Everything above an entry: what a nerve or artery comes from, where a place lies."""
    rows: Table = getattr(text, table)
    above: set[str] = set()
    waiting = [start]
    while waiting:
        named = rows.get(waiting.pop(), {}).get(UPWARD[table], [])
        fresh = {named} - {""} if isinstance(named, str) else set(named)
        waiting += fresh - above
        above |= fresh
    return frozenset(above)


def in_line(text: Text, table: str, one: str, other: str) -> bool:
    """Whether two entries are the same, or one lies above the other."""
    return one == other or one in all_above(text, table, other) or other in all_above(text, table, one)


def segments_around(segment: str) -> set[str]:
    """A spinal segment and the ones above and below it."""
    place = SEGMENTS.index(segment)
    return {segment, *SEGMENTS[max(place - 1, 0) : place], *SEGMENTS[place + 1 : place + 2]}


def same_action(one: str, other: str) -> bool:
    """Whether two `joint.movement` may stand for the same thing in two books."""
    (joint, movement), (place, motion) = one.split("."), other.split(".")
    joints = joint == place or any({joint, place} <= group for group in GROUPS_OF_JOINTS)
    return joints and (movement == motion or frozenset((movement, motion)) in SAME_MOVEMENT)


@cache
def sites_meet(text: Text, one: str, other: str) -> bool:
    """Whether an attachment to one landmark may be called an attachment to the other."""
    if in_line(text, "landmarks", one, other):
        return True
    first, second = text.landmarks[one], text.landmarks[other]
    if not set(first["bones"]) & set(second["bones"]):
        return False
    if names(first) & names(second):
        return True
    numbers = ribs_or_vertebrae(first), ribs_or_vertebrae(second)
    if all(numbers):
        return bool(set(numbers[0]) & set(numbers[1]))
    kinds = {first["kind"], second["kind"]}
    if kinds & {"expansion", "sheath"}:
        return True
    ends = {first.get("position", ""), second.get("position", "")}
    return (bool(kinds & {"part", "half", "third"}) and ends != {"proximal", "distal"}) or kinds == {
        "surface",
        "border",
    }


def names(landmark: Table) -> set[str]:
    """Its label and synonyms; its bare name may be that of a place on another bone."""
    return {name.lower() for name in (landmark.get("label", ""), *landmark.get("synonyms", [])) if name}


def ribs_or_vertebrae(landmark: Table) -> set[str]:
    """The single ribs, or processes and bodies of vertebrae, that a landmark stands for."""
    name = landmark["name"]
    if not set(landmark["bones"]) & SERIES:
        return set()
    found = re.search(r"([CTL]?)(\d+)(?:\s*–\s*[CTL]?(\d+))?", name.replace("first rib", "1"))
    if not found:
        return set()
    letter, start, end = found[1], int(found[2]), int(found[3] or found[2])
    return {
        f"{which} {letter}{number}"
        for number in range(start, end + 1)
        for which in _pieces(f"{name} {landmark.get('label', '')}")
    }


def _pieces(name: str) -> list[str]:
    """Which pieces of a vertebra or rib are meant; a transverse process has both its tubercles."""
    if "transverse" in name or "tubercles of C" in name:
        tubercles = [side for side in ("anterior", "posterior") if f"{side} tubercle" in name]
        return tubercles or ["anterior", "posterior"]
    words = ("spinous", "articular", "mammillary", "accessory", "bod")
    return [word for word in words if word in name] or ["rib"]
