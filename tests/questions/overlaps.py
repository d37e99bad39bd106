"""The oracle's own view of what may be meant by one another: places, nerves, arteries, movements."""

import re

from tests.questions.source_text import Table, Text

GROUPS_OF_JOINTS = [
    {"sternoclavicular", "acromioclavicular", "scapulothoracic"},
    {"wrist", "intercarpal_joints"},
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


def all_above(table: Table, start: str, key: str) -> set[str]:
    """Everything above an entry by its key `parents`, `parent` or `within`."""
    above: set[str] = set()
    waiting = [start]
    while waiting:
        named = table.get(waiting.pop(), {}).get(key, [])
        fresh = {named} - {""} if isinstance(named, str) else set(named)
        waiting += fresh - above
        above |= fresh
    return above


def in_line(table: Table, one: str, other: str, key: str) -> bool:
    """Whether two entries are the same, or one lies above the other."""
    return one == other or one in all_above(table, other, key) or other in all_above(table, one, key)


def same_action(one: str, other: str) -> bool:
    """Whether two `joint.movement` may stand for the same thing in two books."""
    (joint, movement), (place, motion) = one.split("."), other.split(".")
    joints = joint == place or any({joint, place} <= group for group in GROUPS_OF_JOINTS)
    return joints and (movement == motion or frozenset((movement, motion)) in SAME_MOVEMENT)


def sites_meet(text: Text, one: str, other: str) -> bool:
    """Whether an attachment to one landmark may be called an attachment to the other."""
    if in_line(text.landmarks, one, other, "within"):
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
    """The single ribs or vertebral processes that a landmark stands for."""
    name = landmark["name"]
    if not set(landmark["bones"]) & {"ribs", "atlas", "cervical_vertebrae", "thoracic_vertebrae"}:
        return set()
    which = "transverse" if "transverse" in name else "spinous" if "spinous" in name else "rib"
    found = re.search(r"([CTL]?)(\d+)(?:\s*–\s*[CTL]?(\d+))?", name.replace("first rib", "1"))
    if not found:
        return set()
    letter, start, end = found[1], int(found[2]), int(found[3] or found[2])
    return {f"{which} {letter}{number}" for number in range(start, end + 1)}
