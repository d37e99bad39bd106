"""What follows from the tables and is asked often, worked out once when a catalogue is built.

Everything here tolerates unknown ids and circles, because the content rules run on it too.
"""

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import cache, partial
from itertools import product
from types import MappingProxyType

from quizroom.knowledge.bone_graph import build_graph, joints_on_any_way, joints_on_shortest_way
from quizroom.knowledge.facts import Fact, facts_of
from quizroom.knowledge.model import Artery, Attachment, Bone, Joint, Landmark, Muscle, Nerve, Status

Closure = Mapping[str, frozenset[str]]
Way = Callable[[str, str], frozenset[str]]


@dataclass(frozen=True, slots=True, kw_only=True)
class Crossing:
    """The joints that a muscle (or one part of it) crosses, each proximal to distal.

    `core` by its core attachments, `recorded` by those of every status, `possible` by any way
    between any of its recorded attachments.
    """

    core: tuple[str, ...]
    recorded: tuple[str, ...]
    possible: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Index:
    """Look-ups over a catalogue: crossings by (muscle, part), facts by id and by kind and value."""

    crossings: Mapping[tuple[str, str], Crossing]
    facts: Mapping[str, Fact]
    facts_with: Mapping[tuple[str, str], tuple[Fact, ...]]
    nerves_above: Closure
    nerves_below: Closure
    arteries_above: Closure
    arteries_below: Closure
    wholes: Closure
    site_parts: Closure


@dataclass(frozen=True, slots=True, kw_only=True)
class Anatomy:
    """The tables from which an index is made."""

    bones: Mapping[str, Bone]
    landmarks: Mapping[str, Landmark]
    joints: Mapping[str, Joint]
    nerves: Mapping[str, Nerve]
    arteries: Mapping[str, Artery]
    muscles: Mapping[str, Muscle]


def build_index(anatomy: Anatomy) -> Index:
    """All look-ups of the given tables."""
    facts = [fact for muscle in anatomy.muscles.values() for fact in facts_of(muscle)]
    nerves_above = closure({nerve.id: nerve.parents for nerve in anatomy.nerves.values()})
    arteries_above = closure({a.id: (a.parent,) if a.parent else () for a in anatomy.arteries.values()})
    wholes = closure({landmark.id: landmark.within for landmark in anatomy.landmarks.values()})
    return Index(
        crossings=MappingProxyType(dict(_crossings(anatomy))),
        facts=MappingProxyType({fact.id: fact for fact in facts}),
        facts_with=MappingProxyType(_grouped(facts)),
        nerves_above=nerves_above,
        nerves_below=turned_round(nerves_above),
        arteries_above=arteries_above,
        arteries_below=turned_round(arteries_above),
        wholes=wholes,
        site_parts=turned_round(wholes),
    )


def closure(parents: Mapping[str, tuple[str, ...]]) -> Closure:
    """For each id everything above it, itself left out unless it stands in a circle."""
    return MappingProxyType({start: frozenset(_above(start, parents)) for start in parents})


def turned_round(above: Closure) -> Closure:
    """For each id everything below it."""
    below: dict[str, set[str]] = {}
    for start, ancestors in above.items():
        for ancestor in ancestors:
            below.setdefault(ancestor, set()).add(start)
    return MappingProxyType({top: frozenset(ids) for top, ids in below.items()})


def _above(start: str, parents: Mapping[str, tuple[str, ...]]) -> set[str]:
    seen: set[str] = set()
    waiting = list(parents[start])
    while waiting:
        parent = waiting.pop()
        if parent not in seen:
            seen.add(parent)
            waiting.extend(parents.get(parent, ()))
    return seen


def _grouped(facts: Iterable[Fact]) -> dict[tuple[str, str], tuple[Fact, ...]]:
    groups: dict[tuple[str, str], list[Fact]] = {}
    for fact in facts:
        groups.setdefault((fact.kind, fact.value), []).append(fact)
    return {key: tuple(group) for key, group in groups.items()}


def _crossings(anatomy: Anatomy) -> Iterator[tuple[tuple[str, str], Crossing]]:
    graph = build_graph(anatomy.joints.values())
    shortest = cache(partial(joints_on_shortest_way, graph))
    every = cache(partial(joints_on_any_way, graph))
    for muscle in anatomy.muscles.values():
        crossed = {
            part: _crossed(anatomy, muscle, part, shortest, every)
            for part in [part.id for part in muscle.parts] or [""]
        }
        crossed[""] = tuple(frozenset[str]().union(*sets) for sets in zip(*crossed.values(), strict=True))
        for part, sets in crossed.items():
            core, recorded, possible = (_in_order(anatomy, joints) for joints in sets)
            yield (muscle.id, part), Crossing(core=core, recorded=recorded, possible=possible)


def _crossed(
    anatomy: Anatomy, muscle: Muscle, part: str, shortest: Way, every: Way
) -> tuple[frozenset[str], ...]:
    core = _bone_pairs(anatomy.landmarks, muscle, part, ("core",))
    recorded = _bone_pairs(anatomy.landmarks, muscle, part, ("core", "variant", "minority"))
    ways = ((core, shortest), (recorded, shortest), (recorded, every))
    return tuple(frozenset[str]().union(*(way(*pair) for pair in pairs)) for pairs, way in ways)


def core_bone_pairs(landmarks: Mapping[str, Landmark], muscle: Muscle) -> tuple[tuple[str, str], ...]:
    """The bones of origin and insertion that belong together, by the core rows of each part."""
    parts = [part.id for part in muscle.parts] or [""]
    pairs = (pair for part in parts for pair in _bone_pairs(landmarks, muscle, part, ("core",)))
    return tuple(sorted(set(pairs)))


def _bone_pairs(
    landmarks: Mapping[str, Landmark], muscle: Muscle, part: str, statuses: tuple[Status, ...]
) -> set[tuple[str, str]]:
    starts = _bones(landmarks, muscle.origins, part, statuses)
    ends = _bones(landmarks, muscle.insertions, part, statuses)
    return set(product(starts, ends))


def _bones(
    landmarks: Mapping[str, Landmark],
    rows: tuple[Attachment, ...],
    part: str,
    statuses: tuple[Status, ...],
) -> set[str]:
    sites = (landmarks.get(row.site) for row in rows if row.part in ("", part) and row.status in statuses)
    return {bone for site in sites if site for bone in site.bones}


def _in_order(anatomy: Anatomy, joints: frozenset[str]) -> tuple[str, ...]:
    return tuple(sorted(joints, key=lambda joint: (anatomy.joints[joint].order, joint)))
