"""Actions in the words of the OpenStax tables, held against joints and movements."""

import re
from collections.abc import Iterable, Iterator
from functools import cache
from typing import NamedTuple

from quizroom.knowledge.catalogue import Catalogue
from tests.reference.rows import Row, Target, targets, words
from tests.reference.verdicts import Judgement, Verdict, facts_about, held, joined

_NOT_BEFORE = re.compile(r"\(\?!.*\)$")


class Claim(NamedTuple):
    """At one of these joints, one of these movements."""

    joints: tuple[str, ...]
    movements: tuple[str, ...]


def judge_action(catalogue: Catalogue, row: Row) -> Iterator[Judgement]:
    """Whether every movement that the row claims is recorded, with any status."""
    verdicts = (_held(catalogue, target, claim) for target in targets(row) for claim in claims(row.value))
    yield Judgement("action", joined(verdicts))


@cache
def claims(value: str) -> tuple[Claim, ...]:
    """What an action column claims: "Wrist; hand: Flexion; abduction" is two movements at the wrist."""
    made: list[Claim] = []
    joints: tuple[str, ...] = ()
    moved = False
    for word in _words(value.lower()):
        target = words("motions")["targets"].get(word)
        if target:
            joints = (*([] if moved else joints), *target)
            moved = False
        else:
            moved = True
            made += [Claim(joints, movements) for movements in _movements(word)]
    return tuple(made)


def is_claimed(joint: str, movement: str, rows: Iterable[Row]) -> bool:
    """Whether one of the rows claims the movement at the joint."""
    made = (claim for row in rows for claim in claims(row.value))
    return any(joint in claim.joints and movement in claim.movements for claim in made)


def _held(catalogue: Catalogue, target: Target, claim: Claim) -> Verdict:
    """A movement that none of the joints has, in our model of them, cannot be compared."""
    possible = any(
        set(catalogue.joints[joint].movements).intersection(claim.movements) for joint in claim.joints
    )
    recorded = {fact.value for fact in facts_about(catalogue, target, "action")}
    wanted = {f"{joint}.{movement}" for joint in claim.joints for movement in claim.movements}
    return held(told=possible, recorded=bool(recorded & wanted))


def _words(value: str) -> list[str]:
    tables = words("motions")
    pattern = "|".join((*tables["targets"], *tables["movements"]))
    return [match.group() for match in re.finditer(pattern, value)]


def _movements(word: str) -> list[tuple[str, ...]]:
    meanings: dict[str, list[list[str]]] = words("motions")["movements"]
    claimed = next(
        made for pattern, made in meanings.items() if re.fullmatch(_NOT_BEFORE.sub("", pattern), word)
    )
    return [tuple(any_of) for any_of in claimed]
