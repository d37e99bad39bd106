"""The trees of nerves and arteries: what comes before, what comes after, which muscles are reached."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from quizroom.knowledge.catalogue import Catalogue
from quizroom.knowledge.facts import Fact, FactKind
from quizroom.knowledge.model import Nerve, NerveKind, Status
from quizroom.knowledge.segments import place_of, span
from quizroom.knowledge.wording import listed

_CORE: tuple[Status, ...] = ("core",)
_LEVELS: tuple[NerveKind, ...] = ("root", "trunk", "plexus", "division", "cord")


@dataclass(frozen=True, slots=True)
class PathStep:
    """One step of a path: a nerve, or several at one level under one name ("lateral and medial cords")."""

    kind: NerveKind
    name: str
    ids: tuple[str, ...]


def nerve_ancestors(catalogue: Catalogue, nerve: str) -> frozenset[str]:
    """Everything the nerve comes from, up to its roots; itself left out."""
    return catalogue.index.nerves_above.get(nerve, frozenset())


def nerve_descendants(catalogue: Catalogue, nerve: str) -> frozenset[str]:
    """Everything that comes from the nerve; itself left out."""
    return catalogue.index.nerves_below.get(nerve, frozenset())


def artery_ancestors(catalogue: Catalogue, artery: str) -> frozenset[str]:
    """The arteries that blood passes before this one."""
    return catalogue.index.arteries_above.get(artery, frozenset())


def artery_descendants(catalogue: Catalogue, artery: str) -> frozenset[str]:
    """The arteries that this one feeds."""
    return catalogue.index.arteries_below.get(artery, frozenset())


def supplies_of_nerve(
    catalogue: Catalogue, nerve: str, statuses: tuple[Status, ...] = _CORE
) -> tuple[Fact, ...]:
    """The nerve facts of every muscle or part that the nerve or a branch of it reaches."""
    return _facts(catalogue, "nerve", (nerve, *sorted(nerve_descendants(catalogue, nerve))), statuses)


def muscles_of_nerve(
    catalogue: Catalogue, nerve: str, statuses: tuple[Status, ...] = _CORE
) -> tuple[str, ...]:
    """The muscles that the nerve or a branch of it reaches, in content order."""
    reached = {fact.muscle for fact in supplies_of_nerve(catalogue, nerve, statuses)}
    return tuple(muscle for muscle in catalogue.muscles if muscle in reached)


def muscles_of_artery(
    catalogue: Catalogue, artery: str, statuses: tuple[Status, ...] = _CORE
) -> tuple[str, ...]:
    """The muscles that the artery or a branch of it feeds, in content order."""
    arteries = (artery, *sorted(artery_descendants(catalogue, artery)))
    reached = {fact.muscle for fact in _facts(catalogue, "artery", arteries, statuses)}
    return tuple(muscle for muscle in catalogue.muscles if muscle in reached)


def artery_path(catalogue: Catalogue, artery: str) -> tuple[str, ...]:
    """Ids of the arteries from the first of the tree to this one."""
    above = catalogue.index.arteries_above
    ancestors = sorted(
        artery_ancestors(catalogue, artery) - {artery}, key=lambda one: len(above.get(one, ()))
    )
    return (*ancestors, artery)


def nerve_path(catalogue: Catalogue, nerve: str, roots: Sequence[str] = ()) -> tuple[PathStep, ...]:
    """From the spinal roots over trunks, divisions and cords to the nerve.

    With `roots` (those of one muscle) only the way that fibres of these roots can take: C6-C7 fibres
    reach the median nerve through the lateral cord alone. Cranial nerves have no roots and are told whole.
    """
    wanted = set(roots or catalogue.nerves[nerve].roots)
    ancestors = [
        node
        for node in map(catalogue.nerves.get, nerve_ancestors(catalogue, nerve) - {nerve})
        if node and (not wanted or wanted & set(node.roots))
    ]
    if not wanted:
        # Here a plexus lies on the way of a nerve, not before it.
        return tuple(_single(node) for node in (*_by_depth(catalogue, ancestors), catalogue.nerves[nerve]))
    plexus = [_step(kind, [node for node in ancestors if node.kind == kind]) for kind in _LEVELS]
    nerves = _by_depth(catalogue, [node for node in ancestors if node.kind not in _LEVELS])
    chain = [_single(node) for node in [*nerves, catalogue.nerves[nerve]]]
    return (*(step for step in plexus if step.ids), *chain)


def short_nerve_path(catalogue: Catalogue, nerve: str, roots: Sequence[str] = ()) -> tuple[PathStep, ...]:
    """As `nerve_path`, without trunks and divisions where a cord tells enough."""
    path = nerve_path(catalogue, nerve, roots)
    if not any(step.kind == "cord" for step in path):
        return path
    return tuple(step for step in path if step.kind not in ("trunk", "division"))


def _facts(
    catalogue: Catalogue, kind: FactKind, values: Iterable[str], statuses: tuple[Status, ...]
) -> tuple[Fact, ...]:
    facts = (fact for value in values for fact in catalogue.index.facts_with.get((kind, value), ()))
    return tuple(fact for fact in facts if fact.status in statuses)


def _by_depth(catalogue: Catalogue, nodes: list[Nerve]) -> list[Nerve]:
    return sorted(nodes, key=lambda node: (len(nerve_ancestors(catalogue, node.id)), node.id))


def _single(node: Nerve) -> PathStep:
    return PathStep(node.kind, node.name, (node.id,))


def _step(kind: NerveKind, nodes: list[Nerve]) -> PathStep:
    nodes.sort(key=lambda node: (place_of(node.roots), node.id))
    ids = tuple(node.id for node in nodes)
    if kind == "root":
        return PathStep(kind, span(node.name for node in nodes), ids)
    return PathStep(kind, _one_name([node.name for node in nodes]), ids)


def _one_name(names: list[str]) -> str:
    """Several names as one: "upper and middle trunks of the brachial plexus", "anterior divisions"."""
    if len(names) < 2:
        return "".join(names)
    heads = [name.split(" of ")[0] for name in names]
    rest = [name.removeprefix(head) for name, head in zip(names, heads, strict=True)]
    adjectives = list(dict.fromkeys(head.rpartition(" ")[0] for head in heads))
    noun = heads[0].rpartition(" ")[2]
    shared = rest[0] if len(set(rest)) == 1 else ""
    return f"{listed(adjectives)} {noun}s{shared}"
