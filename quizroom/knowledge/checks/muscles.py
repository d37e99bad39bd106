"""Rules: each muscle is complete and its rows fit one another."""

from collections import Counter
from collections.abc import Iterator

from quizroom.knowledge.anatomy import joints_crossed, joints_recorded
from quizroom.knowledge.bone_graph import build_graph, ways_part
from quizroom.knowledge.catalogue import Catalogue
from quizroom.knowledge.checks.flaw import Flaw, at_fact, at_muscle
from quizroom.knowledge.facts import FactKind, facts_of
from quizroom.knowledge.index import core_bone_pairs
from quizroom.knowledge.model import Action, Attachment
from quizroom.knowledge.suggest import suggest

TOPICS = ("origins", "insertions", "actions", "nerves", "roots", "arteries", "compartment", "names", "parts")
"""What a `[[differ]]` may be about."""

_EXPLAINED_BY: dict[FactKind, tuple[str, ...]] = {
    "origin": ("origins",),
    "insertion": ("insertions",),
    "action": ("actions",),
    "nerve": ("nerves", "roots"),
}
"""Arteries are left out: books list several for a muscle, and none is "the" artery."""


def every_part_has_origin_and_insertion(catalogue: Catalogue) -> Iterator[Flaw]:
    """Each part, or the muscle if it has none, has a core origin and a core insertion."""
    for muscle in catalogue.muscles.values():
        for part in [part.id for part in muscle.parts] or [""]:
            for table, rows in (("origins", muscle.origins), ("insertions", muscle.insertions)):
                if not _has_core(rows, part):
                    message = f'"{part or muscle.name}" has no core row among `{table}`'
                    remedy = f"add one to [[{table}]], for the part or without `part` for the whole muscle"
                    yield at_muscle(catalogue, muscle, table, message, remedy)


def every_muscle_has_an_action(catalogue: Catalogue) -> Iterator[Flaw]:
    """Each muscle has at least one core action."""
    for muscle in catalogue.muscles.values():
        if not any(row.status == "core" for row in muscle.actions):
            yield at_muscle(catalogue, muscle, "actions", "no core action", "add what it does to [[actions]]")


def every_muscle_has_a_nerve(catalogue: Catalogue) -> Iterator[Flaw]:
    """Each muscle, and each part of it, has a core nerve."""
    for muscle in catalogue.muscles.values():
        for part in [part.id for part in muscle.parts] or [""]:
            if not any(row.status == "core" and row.part in ("", part) for row in muscle.nerves):
                message = f'"{part or muscle.name}" has no core nerve'
                yield at_muscle(catalogue, muscle, "nerves", message, "add its motor nerve to [[nerves]]")


def every_muscle_has_an_artery(catalogue: Catalogue) -> Iterator[Flaw]:
    """Each muscle has at least one core artery."""
    for muscle in catalogue.muscles.values():
        if not any(row.status == "core" for row in muscle.arteries):
            yield at_muscle(catalogue, muscle, "arteries", "no core artery", "add one to [[arteries]]")


def every_fact_is_given_once(catalogue: Catalogue) -> Iterator[Flaw]:
    """No two rows of a muscle state the same fact: they would share one id."""
    for muscle in catalogue.muscles.values():
        counts = Counter(fact.id for fact in facts_of(muscle))
        for fact in facts_of(muscle):
            if counts.pop(fact.id, 1) > 1:
                remedy = "join the rows in one, with the finer words in `detail` or `condition`"
                yield at_fact(catalogue, fact, "", f"{fact.id} is stated twice", remedy)


def every_action_joint_is_crossed(catalogue: Catalogue) -> Iterator[Flaw]:
    """A muscle acts on joints that lie between its origin and its insertion."""
    for fact in catalogue.index.facts.values():
        if not isinstance(fact.row, Action) or fact.row.joint not in catalogue.joints:
            continue
        if not _is_placed(catalogue, fact.muscle):
            continue
        crossed = joints_crossed if fact.status == "core" else joints_recorded
        joints = crossed(catalogue, fact.muscle, fact.part)
        if fact.row.joint not in joints:
            between = ", ".join(joints) or "no joint at all"
            message = f'"{fact.row.joint}" does not lie between origin and insertion ({between})'
            remedy = "mend the joint or the attachments, or list the fact in exceptions.toml with the reason"
            yield at_fact(catalogue, fact, "joint", message, remedy)


def joint_allows_the_movement(catalogue: Catalogue) -> Iterator[Flaw]:
    """The joint of an action knows the movement."""
    for fact in catalogue.index.facts.values():
        if isinstance(fact.row, Action) and fact.row.joint in catalogue.joints:
            allowed = catalogue.joints[fact.row.joint].movements
            if fact.row.movement not in allowed:
                message = f'"{fact.row.joint}" does not allow "{fact.row.movement}"'
                remedy = f"{suggest(fact.row.movement, allowed)} (it allows {', '.join(allowed)})"
                yield at_fact(catalogue, fact, "movement", message, remedy)


def shortest_way_is_one(catalogue: Catalogue) -> Iterator[Flaw]:
    """Where two ways between a muscle's core bones are equally short, both cross the same joints."""
    graph = build_graph(catalogue.joints.values())
    for muscle in catalogue.muscles.values():
        for start, end in core_bone_pairs(catalogue.landmarks, muscle):
            if ways_part(graph, start, end):
                message = f"from {start} to {end} two ways are equally short and cross different joints"
                remedy = "mend `links` in joints.toml so that the way the muscle takes is the shorter one"
                yield at_muscle(catalogue, muscle, "origins", message, remedy)


def contested_facts_are_explained(catalogue: Catalogue) -> Iterator[Flaw]:
    """A variant or minority row comes with a `[[differ]]` that says who says what."""
    for fact in catalogue.index.facts.values():
        wanted = _EXPLAINED_BY.get(fact.kind, ())
        topics = {difference.about for difference in catalogue.muscles[fact.muscle].differ}
        if fact.status != "core" and wanted and not topics.intersection(wanted):
            remedy = f'add a [[differ]] with about = "{wanted[0]}" that says who says what'
            yield at_fact(catalogue, fact, "status", f"{fact.status}, but no difference is told", remedy)


def every_difference_has_a_topic(catalogue: Catalogue) -> Iterator[Flaw]:
    """`about` of a `[[differ]]` is one of the known topics."""
    for muscle in catalogue.muscles.values():
        for position, difference in enumerate(muscle.differ):
            if difference.about not in TOPICS:
                remedy = f"write one of {', '.join(TOPICS)}"
                key = f"differ[{position}].about"
                yield at_muscle(catalogue, muscle, key, f'"{difference.about}" is no topic', remedy)


def _has_core(rows: tuple[Attachment, ...], part: str) -> bool:
    return any(row.status == "core" and row.part in ("", part) for row in rows)


def _is_placed(catalogue: Catalogue, muscle: str) -> bool:
    """Whether all its sites are known; else another rule has told already."""
    one = catalogue.muscles[muscle]
    return all(row.site in catalogue.landmarks for row in (*one.origins, *one.insertions))
