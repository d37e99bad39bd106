"""Where a raw score lies on Rasch's scale, given the difficulties of the items."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import exp, fsum, sqrt

from quizroom.analysis.rasch import Estimate

EXTREME_BY = 0.3
"""A raw score of nothing or everything right has no finite place; it is taken as this much less extreme (one
of the values in use, common practice)."""
CLOSE = 1e-12
MOST_STEPS = 200
WIDEST_STEP = 1.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Ability:
    """What a raw score says; `is_extreme` if nothing or all was right, so that the place is a convention."""

    score: int
    estimate: Estimate
    is_extreme: bool


def abilities(difficulties: Sequence[float]) -> list[Ability]:
    """For each raw score from 0 to the number of items, its ability and standard error, in logits."""
    return [ability_of(score, difficulties) for score in range(len(difficulties) + 1)]


def ability_of(score: int, difficulties: Sequence[float]) -> Ability:
    """By maximum likelihood: where the expected score equals this one. SE = 1 / sqrt(sum PQ)."""
    extreme = score in (0, len(difficulties))
    sought = min(max(float(score), EXTREME_BY), len(difficulties) - EXTREME_BY)
    at = 0.0
    for _ in range(MOST_STEPS):
        chances = [chance(at, one) for one in difficulties]
        information = fsum(p * (1 - p) for p in chances)
        step = (sought - fsum(chances)) / information
        at += max(-WIDEST_STEP, min(WIDEST_STEP, step))
        if abs(step) < CLOSE:
            break
    information = fsum(p * (1 - p) for p in (chance(at, one) for one in difficulties))
    return Ability(score=score, estimate=Estimate(value=at, error=1 / sqrt(information)), is_extreme=extreme)


def chance(ability: float, difficulty: float) -> float:
    """P(right) = 1 / (1 + e^(difficulty - ability))."""
    return 1 / (1 + exp(difficulty - ability))
