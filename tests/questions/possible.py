"""What any recorded reading may make true, whatever a course rules: none of it may be a wrong option."""

from functools import cache

from tests.questions.joint_ways import joints_that_may_be_crossed
from tests.questions.overlaps import all_above, in_line, same_action, segments_around, sites_meet
from tests.questions.source_text import Reading, Text

TABLES = {"origin": ["origins"], "insertion": ["insertions"], "attachment": ["origins", "insertions"]}
TABLES |= {"nerve": ["nerves"], "artery": ["arteries"], "action": ["actions"], "prime": ["actions"]}
JOINT_WORDS = ("joint", "joints", "articulation", "articulations", "symphysis")


def readings(text: Text, relation: str, holder: str) -> list[Reading]:
    """All rows that hold for a muscle, or for `muscle/part`."""
    muscle, _, part = holder.partition("/")
    rows = [row for table in TABLES[relation] for row in text.by_muscle.get((table, muscle), ())]
    return [row for row in rows if not part or row.part in ("", part)]


@cache
def may_be(text: Text, relation: str, holder: str, value: str) -> bool:
    """Whether any reading may make the value true of the holder."""
    match relation:
        case "crossing":
            return value in _joints(text, holder)
        case "compartment":
            own: str = text.muscles[holder]["compartment"]
            contested = is_contested(text, holder) and is_next_to(text, text.muscles[holder]["region"], value)
            return own == value or contested
        case "root":
            rows = readings(text, "nerve", holder)
            return any(value in segments_around(segment) for row in rows for segment in row.roots)
        case "meaning":
            return meaning(text, holder) == meaning(text, value)
    return any(values_meet(text, relation, row.value, value) for row in readings(text, relation, holder))


@cache
def muscles_that_may(text: Text, relation: str, value: str) -> frozenset[str]:
    """All muscles of which the value may be true."""
    return frozenset(muscle for muscle in text.muscles if may_be(text, relation, muscle, value))


@cache
def values_meet(text: Text, relation: str, recorded: str, asked: str) -> bool:
    """Whether what is recorded may make true what is asked."""
    match relation:
        case "nerve":
            return recorded == asked or asked in all_above(text, "nerves", recorded)
        case "artery":
            return in_line(text, "arteries", recorded, asked)
        case "action" | "prime":
            return same_action(recorded, asked)
        case _:
            return sites_meet(text, recorded, asked)


def overlapping(text: Text, relation: str, one: str, other: str) -> bool:
    """Whether two values may not stand side by side as options."""
    if relation == "nerve":
        return in_line(text, "nerves", one, other)
    return one == other or (relation in TABLES and values_meet(text, relation, one, other))


def is_contested(text: Text, muscle: str) -> bool:
    """Whether books differ on the group of a muscle."""
    return any(row["about"] == "compartment" for row in text.muscles[muscle].get("differ", ()))


@cache
def is_next_to(text: Text, region: str, compartment: str) -> bool:
    """Whether a compartment lies in the region or in the one before or after it."""
    order = sorted(text.regions, key=lambda one: int(text.regions[one]["order"]))
    there: str = text.compartments[compartment]["region"]
    return abs(order.index(region) - order.index(there)) <= 1


def meaning(text: Text, muscle: str) -> str:
    """What the name of a muscle means, without the words it is made of."""
    whole: str = text.muscles[muscle]["meaning"]
    return whole.split(":", maxsplit=1)[0].split(";", maxsplit=1)[0].strip()


@cache
def named_nerves(text: Text, nerve: str) -> frozenset[str]:
    """A nerve and those before it that have a name to be asked for."""
    line = {nerve} | all_above(text, "nerves", nerve)
    rows = text.nerves
    return frozenset(
        one for one in line if rows[one]["kind"] in ("nerve", "branch") and "nerve" in rows[one]["name"]
    )


@cache
def true_joints(text: Text) -> frozenset[str]:
    """Joints where bones meet: the first words of their names say so."""
    heads = {joint: row["name"].split(" of ")[0].split(" over ")[0] for joint, row in text.joints.items()}
    return frozenset(joint for joint, head in heads.items() if head.split()[-1] in JOINT_WORDS)


@cache
def _joints(text: Text, holder: str) -> frozenset[str]:
    return frozenset(joints_that_may_be_crossed(text, holder))
