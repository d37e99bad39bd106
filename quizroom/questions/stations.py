"""Orders from proximal to distal: where muscles insert along a limb, and what a muscle passes on its way."""

from collections.abc import Iterator, Sequence
from functools import partial

from quizroom.knowledge.bone_graph import BoneGraph, build_graph, joints_on_shortest_way
from quizroom.knowledge.facts import WHOLE
from quizroom.questions.ask import Ask
from quizroom.questions.explain import reason_of_joint, reason_of_unit
from quizroom.questions.limb import RAYS, Stretch, stretch_of
from quizroom.questions.orders import Step, sequence_of
from quizroom.questions.syllabus import (
    Syllabus,
    Unit,
    certain_values,
    claims_of,
    units,
)
from quizroom.questions.words import concept_text, end_word, unit_text

FEWEST, MOST = 3, 4
MOST_JOINTS = 3
"""Beside both ends, so that a way has at most five stations."""


def insertion_order_asks(syllabus: Syllabus) -> Iterator[Ask]:
    """Orders of muscles with a clear place of insertion on a limb, none of them in two orders."""
    placed = [
        (unit, stretch) for unit in units(syllabus, "insertion") if (stretch := _stretch(syllabus, unit))
    ]
    while placed:
        chain = _chain(placed)
        if len(chain) < FEWEST:
            del placed[0]
            continue
        placed = [one for one in placed if one[0] not in chain]
        yield _insertion_order(syllabus, chain)


def muscle_way_asks(syllabus: Syllabus) -> Iterator[Ask]:
    """From origin over the joints crossed to the insertion, for each pair of clear ends."""
    graph = build_graph(syllabus.catalogue.joints.values())
    for unit in units(syllabus, "crossing"):
        for origin in certain_values(syllabus, "origin", unit):
            for insertion in certain_values(syllabus, "insertion", unit):
                joints = _joints_between(syllabus, graph, unit, origin, insertion)
                if joints and _ends_are_clear(syllabus, unit, origin, insertion):
                    yield _muscle_way(syllabus, unit, (origin, *joints, insertion))


def _stretch(syllabus: Syllabus, unit: Unit) -> Stretch | None:
    """Where the unit inserts by all readings together."""
    claims = claims_of(syllabus, "insertion", unit)
    if not any(claim.certain for claim in claims):
        return None
    return stretch_of(syllabus.catalogue, (claim.value for claim in claims))


def _chain(placed: Sequence[tuple[Unit, Stretch]]) -> tuple[Unit, ...]:
    """The first and those after it, as long as each lies strictly before or after all others."""
    chain: list[tuple[Unit, Stretch]] = []
    for unit, stretch in placed:
        is_new = all(unit.muscle != other.muscle for other, _ in chain)
        if is_new and all(stretch.before(other) or other.before(stretch) for _, other in chain):
            chain.append((unit, stretch))
        if len(chain) == MOST:
            break
    return tuple(unit for unit, _ in sorted(chain, key=lambda one: one[1].start))


def _insertion_order(syllabus: Syllabus, chain: tuple[Unit, ...]) -> Ask:
    ends = f"{end_word(syllabus.words, 'insertion')}s"
    return Ask(
        family="ordering",
        direction="insertions_along_limb",
        subject=chain[0].id,
        relation="insertion",
        kind="muscle",
        key=tuple(unit.id for unit in chain),
        barred=frozenset(),
        facts=tuple(f"{unit.muscle}/place_of_insertion/{unit.part or WHOLE}/limb" for unit in chain),
        muscles=tuple(unit.muscle for unit in chain),
        formats=("ordering",),
        stem=f"In which order do these have their {ends}, from proximal to distal?",
        make=sequence_of(_insertion_steps),
    )


def _insertion_steps(syllabus: Syllabus, ask: Ask) -> list[Step]:
    steps = []
    for concept in ask.key:
        unit = Unit(*concept.split("/"))
        text = unit_text(syllabus.words, unit.muscle, unit.part).removeprefix("the ")
        steps.append(Step(concept=concept, text=text, reason=reason_of_unit(syllabus, "insertion", unit)))
    return steps


def _joints_between(
    syllabus: Syllabus, graph: BoneGraph, unit: Unit, origin: str, insertion: str
) -> tuple[str, ...]:
    """Joints one after another on every way between the bones of two ends; of those at which it acts."""
    starts, ends = (syllabus.catalogue.landmarks[site].bones for site in (origin, insertion))
    ways = [joints_on_shortest_way(graph, start, end) for start in starts for end in ends]
    acting = {claim.value.partition(".")[0] for claim in claims_of(syllabus, "action", unit) if claim.usual}
    crossed = acting.intersection(certain_values(syllabus, "crossing", unit), *ways)
    rays = ([joint for joint in ray if joint in crossed] for ray in RAYS)
    return tuple(max(rays, key=len)[-MOST_JOINTS:])


def _ends_are_clear(syllabus: Syllabus, unit: Unit, origin: str, insertion: str) -> bool:
    """Both on bone, and neither recorded as the other end by any reading."""
    sites = (syllabus.catalogue.landmarks[site] for site in (origin, insertion))
    reverse = {claim.value for claim in claims_of(syllabus, "insertion", Unit(unit.muscle))}
    forward = {claim.value for claim in claims_of(syllabus, "origin", Unit(unit.muscle))}
    return all(site.tissue == "bone" for site in sites) and origin not in reverse and insertion not in forward


def _muscle_way(syllabus: Syllabus, unit: Unit, way: tuple[str, ...]) -> Ask:
    text = unit_text(syllabus.words, unit.muscle, unit.part)
    first, last = end_word(syllabus.words, "origin"), end_word(syllabus.words, "insertion")
    return Ask(
        family="ordering",
        direction="way_of_muscle",
        subject=unit.id,
        relation="crossing",
        kind="landmark",
        key=way,
        barred=frozenset(),
        facts=(f"{unit.muscle}/way/{unit.part or WHOLE}/stations",),
        muscles=(unit.muscle,),
        unit=(unit.muscle, unit.part),
        formats=("ordering",),
        stem=f"In which order do these follow along {text}, from {first} to {last}?",
        make=sequence_of(partial(_way_steps, unit)),
    )


def _way_steps(unit: Unit, syllabus: Syllabus, ask: Ask) -> list[Step]:
    first, *joints, last = ask.key
    return [
        Step(
            concept=first,
            text=concept_text(syllabus.words, "landmark", first),
            reason=reason_of_unit(syllabus, "origin", unit, focus=first),
        ),
        *(
            Step(
                concept=joint,
                text=concept_text(syllabus.words, "joint", joint),
                reason=reason_of_joint(syllabus, unit, joint),
            )
            for joint in joints
        ),
        Step(
            concept=last,
            text=concept_text(syllabus.words, "landmark", last),
            reason=reason_of_unit(syllabus, "insertion", unit, focus=last),
        ),
    ]
