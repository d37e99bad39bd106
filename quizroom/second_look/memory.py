"""How well one fact is remembered in one direction: a Bayesian half-life that knows of guessing.

The chance to recall halves with every half-life: p(t) = 2^(-t/h) (Settles & Meeder 2016, ACL). The half-life
is not known exactly: recall after `hours` has a Beta distribution, which each answer corrects by Bayes' rule
in closed form. Method and check values: the public-domain library ebisu 2, against which the tests compare.

What an answer tells is weighed by how likely it is without recall: one of four options is right by chance in
one of four cases. Beside what it tells, a look also strengthens: the harder the recall was, the more. That
part is our own (see `GAIN`), and so is the choice of its numbers.
"""

from collections.abc import Callable
from dataclasses import dataclass, replace
from functools import lru_cache
from math import exp, lgamma, log, sqrt

GAIN = 1.5
"""A right answer multiplies the half-life by 1 + GAIN x (1 - predicted recall).

That recall which was hard strengthens more is known as a desirable difficulty (Bjork 1994, from memory); no
source gives this number. It was chosen so that predictions come near to what learners of another law recall
(`simulate`).
"""
READING = 0.5
"""The same for who did not recall it and read the record: multiplied by 1 + READING x (1 - recall)."""
SHAPE = 4.0
"""Confidence after an answer, at most: otherwise what was learned long ago could hardly be seen to fade."""
SHORTEST_HOURS = 12.0
LONGEST_HOURS = 10 * 365 * 24.0
_SOONEST = 0.02
"""Answers sooner than this share of a half-life are counted as so late: they can tell next to nothing."""
_STEPS = 45
"""Halvings, down to a part in 10^12."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Memory:
    """Recall after `hours` has a Beta distribution. With alpha = beta, `hours` is the half-life."""

    alpha: float
    beta: float
    hours: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Evidence:
    """An answer: whether it was right, and how likely a right one is with recall and without.

    `by_guessing` is 0 for typed words and 1/4 for one of four options; slow and unsure answers have more.
    """

    right: bool
    by_recall: float = 1.0
    by_guessing: float = 0.0


NEW = Memory(alpha=SHAPE, beta=SHAPE, hours=24.0)
"""What has been shown once: even odds the next day (common practice, no source)."""


def recall(memory: Memory, hours: float) -> float:
    """The predicted chance, 0 to 1, to recall after so many hours without another look."""
    return _share(memory, max(0.0, hours) / memory.hours)


def hours_until(memory: Memory, chance: float) -> float:
    """Hours until the predicted recall has fallen to a chance between 0 and 1."""
    return memory.hours * _lapse_until(memory.alpha, memory.beta, chance)


def judged(memory: Memory, hours: float, evidence: Evidence) -> Memory:
    """The memory as known after an answer `hours` after the last look: Bayes' rule alone.

    The result is again a Beta distribution, of the same mean and variance, at the new half-life.
    """
    lapse = max(hours / memory.hours, _SOONEST)
    told = evidence.by_recall - evidence.by_guessing
    slope, rest = (told, evidence.by_guessing) if evidence.right else (-told, 1.0 - evidence.by_guessing)

    def moment(power: float) -> float:
        return slope * _share(memory, lapse + power) + rest * _share(memory, power)

    whole = moment(0.0)
    if whole <= 0.0:
        return memory
    moved = _falling(lambda power: moment(power) / whole, 0.5)
    variance = moment(2 * moved) / whole - 0.25
    shape = 0.5 * (0.25 / variance - 1.0)
    return Memory(alpha=shape, beta=shape, hours=memory.hours * moved)


def after_look(memory: Memory, hours: float, evidence: Evidence) -> Memory:
    """The memory after an answer and after its record was read: what it told, and what it strengthened."""
    chance = recall(memory, hours)
    recalled = 0.0
    if evidence.right:
        by_recall = chance * evidence.by_recall
        recalled = by_recall / (by_recall + (1.0 - chance) * evidence.by_guessing)
    known = judged(memory, hours, evidence)
    return _bounded(replace(known, hours=known.hours * _strengthened(chance, recalled)))


def expected_after(memory: Memory, hours: float) -> Memory:
    """The memory after a look that goes as is to be expected, to plan ahead with."""
    chance = recall(memory, hours)
    return _bounded(replace(memory, hours=memory.hours * _strengthened(chance, chance)))


def _strengthened(chance: float, recalled: float) -> float:
    """What the half-life is multiplied by: recall was as likely as `chance`, and took place so surely."""
    return 1.0 + (1.0 - chance) * (GAIN * recalled + READING * (1.0 - recalled))


def _bounded(memory: Memory) -> Memory:
    shape = min(memory.alpha, SHAPE)
    return Memory(alpha=shape, beta=shape, hours=min(max(memory.hours, SHORTEST_HOURS), LONGEST_HOURS))


@lru_cache(maxsize=256)
def _lapse_until(alpha: float, beta: float, chance: float) -> float:
    memory = Memory(alpha=alpha, beta=beta, hours=1.0)
    return _falling(lambda lapse: _share(memory, lapse), chance)


def _share(memory: Memory, lapse: float) -> float:
    """The mean of p^lapse, where p has the memory's distribution: B(alpha + lapse, beta) / B(alpha, beta)."""
    whole = memory.alpha + memory.beta
    return exp(lgamma(memory.alpha + lapse) - lgamma(whole + lapse) + lgamma(whole) - lgamma(memory.alpha))


def _falling(curve: Callable[[float], float], level: float) -> float:
    """Where a curve that falls from 1 has come down to a level; by halving on a scale of powers."""
    low, high = 1e-4, 1e4
    for _ in range(_STEPS):
        middle = sqrt(low * high)
        if curve(middle) > level:
            low = middle
        else:
            high = middle
    return exp((log(low) + log(high)) / 2)
