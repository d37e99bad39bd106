"""What a complete lesion of a nerve takes away: derived from the nerve tree, never stored.

A muscle is lost if every fiber that reaches it is cut, weakened if some are. A movement is lost when no
mover is left, severely weakened when every prime mover is lost, weakened when some mover is lost or weak.
These are the textbook expectation; patients vary.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import Literal

from quizroom.knowledge.anatomy.movers import movers
from quizroom.knowledge.catalogue import Catalogue
from quizroom.knowledge.facts import Fact, row_fact
from quizroom.knowledge.model import Action, Supply

Damage = Literal["lost", "weakened", "spared"]
Effect = Literal["lost", "severely weakened", "weakened", "spared"]
CutSupply = tuple[Fact, float]
EXPECTATION = "Textbook expectation for a complete lesion; patients vary."


@dataclass(frozen=True, slots=True, kw_only=True)
class Cut:
    """What is cut through: nerves, trunks or roots, but not what left them before (`spares`)."""

    nerves: frozenset[str]
    spares: frozenset[str] = frozenset()


@dataclass(frozen=True, slots=True, kw_only=True)
class DamagedMuscle:
    """A muscle, or one part of it, with its damage."""

    muscle: str
    part: str
    damage: Damage


@dataclass(frozen=True, slots=True, kw_only=True)
class MovementLoss:
    """A movement at a joint with what is left of it. Movers are `muscle` or `muscle/part`."""

    joint: str
    movement: str
    effect: Effect
    lost: tuple[str, ...]
    left: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Lesion:
    """The consequences of a cut: every muscle that is not spared, every movement that suffers."""

    muscles: tuple[DamagedMuscle, ...]
    movements: tuple[MovementLoss, ...]

    def with_damage(self, damage: Damage) -> tuple[str, ...]:
        """The muscles and parts (`muscle/part`) with this damage, in content order."""
        return tuple(unit(one.muscle, one.part) for one in self.muscles if one.damage == damage)


def unit(muscle: str, part: str) -> str:
    """A muscle, or a part of it, as one word."""
    return f"{muscle}/{part}" if part else muscle


def cut_at(catalogue: Catalogue, level: str) -> Cut:
    """The cut of a named level."""
    found = catalogue.levels[level]
    return Cut(nerves=frozenset((found.nerve,)), spares=frozenset(found.spares))


def lesion_of(catalogue: Catalogue, cut: Cut) -> Lesion:
    """What the cut takes away, by the core facts alone."""
    damages = dict(_damages(catalogue, cut))
    muscles = tuple(
        DamagedMuscle(muscle=muscle, part=part, damage=damage)
        for (muscle, part), damage in damages.items()
        if damage != "spared"
    )
    return Lesion(muscles=muscles, movements=tuple(_movements(catalogue, damages)))


def supplies_cut(catalogue: Catalogue, cut: Cut) -> Iterator[tuple[str, str, tuple[CutSupply, ...]]]:
    """For each muscle and part its nerve facts of every status, each with the share that is cut, 0 to 1."""
    dead = _dead_nerves(catalogue, cut)
    reached = cut.nerves.union(*(catalogue.index.nerves_below.get(nerve, ()) for nerve in cut.nerves))
    for muscle in catalogue.muscles.values():
        shares = [
            _share_cut(catalogue, row, cut, dead) if row.nerve in reached else 0.0 for row in muscle.nerves
        ]
        for part in [one.id for one in muscle.parts] or [""]:
            spared = {muscle.id, unit(muscle.id, part)} & cut.spares
            rows = zip(muscle.nerves, shares, strict=True)
            held = ((row, share) for row, share in rows if row.part in ("", part))
            supplies = ((row_fact(muscle.id, "nerve", row), 0.0 if spared else share) for row, share in held)
            yield muscle.id, part, tuple(supplies)


def _damages(catalogue: Catalogue, cut: Cut) -> Iterator[tuple[tuple[str, str], Damage]]:
    for muscle, part, supplies in supplies_cut(catalogue, cut):
        yield (muscle, part), _damage([share for fact, share in supplies if fact.status == "core"])


def _damage(shares: list[float]) -> Damage:
    if shares and min(shares) == 1:
        return "lost"
    return "weakened" if any(shares) else "spared"


def _dead_nerves(catalogue: Catalogue, cut: Cut) -> frozenset[str]:
    """The nerves cut and all that comes from them alone, without the branches that left before."""
    saved = {one for branch in cut.spares for one in (branch, *catalogue.index.nerves_below.get(branch, ()))}
    return frozenset(
        nerve for nerve in catalogue.nerves if nerve not in saved and not _alive(catalogue, nerve, cut, ())
    )


def _share_cut(catalogue: Catalogue, supply: Supply, cut: Cut, dead: frozenset[str]) -> float:
    """How much of a muscle's supply is cut, 0 to 1: the share of its roots whose fibers are blocked."""
    if supply.nerve in dead:
        return 1.0
    if not supply.roots or _is_saved(catalogue, supply.nerve, cut):
        return 0.0
    blocked = [root for root in supply.roots if not _alive(catalogue, supply.nerve, cut, (root,))]
    return len(blocked) / len(supply.roots)


def _is_saved(catalogue: Catalogue, nerve: str, cut: Cut) -> bool:
    below = catalogue.index.nerves_below
    return any(nerve == branch or nerve in below.get(branch, ()) for branch in cut.spares)


def _alive(catalogue: Catalogue, nerve: str, cut: Cut, roots: tuple[str, ...]) -> bool:
    """Whether fibers (of these roots, or any) still reach the nerve from above without passing the cut."""
    if nerve in cut.nerves or nerve not in catalogue.nerves:
        return False
    node = catalogue.nerves[nerve]
    if roots and node.roots and not set(roots) & set(node.roots):
        return False
    return not node.parents or any(_alive(catalogue, parent, cut, roots) for parent in node.parents)


def _movements(catalogue: Catalogue, damages: dict[tuple[str, str], Damage]) -> Iterator[MovementLoss]:
    for joint in sorted(catalogue.joints.values(), key=lambda one: one.order):
        for movement in joint.movements:
            acting = [fact for fact in movers(catalogue, joint.id, movement, ("core",)) if fact.row]
            effect = _effect(acting, damages)
            if effect != "spared":
                yield MovementLoss(
                    joint=joint.id,
                    movement=movement,
                    effect=effect,
                    lost=tuple(_units(acting, damages, lost=True)),
                    left=tuple(_units(acting, damages, lost=False)),
                )


def _effect(acting: Iterable[Fact], damages: dict[tuple[str, str], Damage]) -> Effect:
    states = [(_is_prime(fact), _damage_of(fact, damages)) for fact in acting]
    if all(damage == "spared" for _, damage in states):
        return "spared"
    if all(damage == "lost" for _, damage in states):
        return "lost"
    primes = [damage for prime, damage in states if prime]
    return "severely weakened" if primes and all(damage == "lost" for damage in primes) else "weakened"


def _is_prime(fact: Fact) -> bool:
    return isinstance(fact.row, Action) and fact.row.role == "prime"


def _damage_of(fact: Fact, damages: dict[tuple[str, str], Damage]) -> Damage:
    """The damage of the part that acts; of a whole muscle that acts, its parts taken together."""
    parts = [
        damage
        for (muscle, part), damage in damages.items()
        if muscle == fact.muscle and fact.part in ("", part)
    ]
    if all(damage == "lost" for damage in parts):
        return "lost"
    return "spared" if all(damage == "spared" for damage in parts) else "weakened"


def _units(acting: Iterable[Fact], damages: dict[tuple[str, str], Damage], *, lost: bool) -> Iterator[str]:
    for fact in acting:
        if (_damage_of(fact, damages) == "lost") == lost:
            yield unit(fact.muscle, fact.part)
