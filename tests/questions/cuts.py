"""The oracle's own view of injuries: whether fibers still find a way past the place that is cut."""

from collections.abc import Iterator
from functools import cache

from tests.questions.oracle import Oracle
from tests.questions.overlaps import all_above, segments_around
from tests.questions.possible import readings
from tests.questions.source_text import Reading, Table, Text


def is_lost(oracle: Oracle, injury: str, holder: str) -> bool:
    """Whether by the standard account nothing reaches any part of the holder."""
    return all(
        rows and all(_share(oracle.text, injury, one, row) == 1 for row in rows)
        for one in _parts(oracle.text, holder)
        for rows in [oracle.standard("nerve", one)]
    )


def may_be_lost(text: Text, injury: str, holder: str) -> bool:
    """Whether by any reading some of the holder is cut off."""
    return any(_is_touched(text, injury, one) for one in _parts(text, holder))


def may_be_spared(text: Text, injury: str, holder: str) -> bool:
    """Whether by any reading some of the holder is still reached."""
    return any(
        _is_doubted(text, injury, one)
        or any(_share(text, injury, one, row) < 1 for row in readings(text, "nerve", one))
        for one in _parts(text, holder)
    )


def fails(oracle: Oracle, injury: str, action: str) -> bool:
    """Whether by the standard account all leaders of a movement are lost, or all who do it."""
    rows = [row for row in oracle.text.rows["actions"] if row.value == action and oracle.is_standard(row)]
    leaders = [row for row in rows if row.role == "prime"] or rows
    return bool(rows) and all(is_lost(oracle, injury, _holder(row)) for row in leaders)


def may_fail(text: Text, injury: str, action: str) -> bool:
    """Whether by any reading somebody who does the movement is touched."""
    rows = [row for row in text.rows["actions"] if row.value == action]
    return not rows or any(may_be_lost(text, injury, _holder(row)) for row in rows)


def cut_nerve(text: Text, injury: str) -> str:
    """The nerve of a level, or the trunk itself."""
    level = text.levels.get(injury)
    return str(level["nerve"]) if level else injury


def _holder(row: Reading) -> str:
    return f"{row.muscle}/{row.part}" if row.part else row.muscle


def _parts(text: Text, holder: str) -> list[str]:
    muscle, _, part = holder.partition("/")
    parts = text.muscles[muscle].get("parts", [])
    return [holder] if part or not parts else [f"{muscle}/{row['id']}" for row in parts]


@cache
def _is_touched(text: Text, injury: str, part: str) -> bool:
    if _is_doubted(text, injury, part):
        return True
    for row in readings(text, "nerve", part):
        if _share(text, injury, part, row) > 0 or _may_come_through(text, injury, row):
            return True
    return False


def _may_come_through(text: Text, injury: str, row: Reading) -> bool:
    """Of a trunk: whether a segment more or less would let fibers of the row come through it."""
    if injury in text.levels or injury not in all_above(text, "nerves", row.value):
        return False
    return any(segments_around(root) & row.roots for root in text.nerves[injury].get("roots", ()))


def _is_doubted(text: Text, injury: str, part: str) -> bool:
    """Whether the level says that books differ on what leaves before it, and this is among that."""
    level = text.levels.get(injury, {})
    named = {"spares": [*level.get("spares", []), *level.get("doubts", [])]}
    return bool(level.get("note")) and _leaves_before(text, named, part, readings(text, "nerve", part))


def _leaves_before(text: Text, level: Table, part: str, rows: list[Reading]) -> bool:
    spared = set(level.get("spares", ()))
    if spared & {part, part.partition("/")[0]}:
        return True
    return any(spared & {row.value, *all_above(text, "nerves", row.value)} for row in rows)


@cache
def _share(text: Text, injury: str, part: str, row: Reading) -> float:
    """How much of what a row brings is cut, 0 to 1."""
    if _leaves_before(text, text.levels.get(injury, {}), part, [row]):
        return 0
    cut = cut_nerve(text, injury)
    ways = list(_ways(text, row.value))
    if all(cut in way for way in ways):
        return 1
    by_root = [[way for way in ways if _carries(text, way, root)] for root in sorted(row.roots)]
    blocked = [bool(found) and all(cut in way for way in found) for found in by_root]
    return sum(blocked) / len(blocked) if blocked else 0


def _ways(text: Text, nerve: str) -> Iterator[tuple[str, ...]]:
    """All ways from a nerve up to where it begins."""
    parents = text.nerves[nerve].get("parents", ())
    if not parents:
        yield (nerve,)
    for parent in parents:
        yield from ((nerve, *way) for way in _ways(text, parent))


def _carries(text: Text, way: tuple[str, ...], root: str) -> bool:
    """Whether every nerve on a way may carry fibers of a root."""
    return all(root in text.nerves[nerve].get("roots", [root]) for nerve in way)
