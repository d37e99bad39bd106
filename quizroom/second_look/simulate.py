"""Simulated learners, to see whether the return plan serves them better than other ways to spend the time.

They forget by another law than the one by which the plan predicts: activation that decays as a power of
time, each presentation the faster the stronger the memory was (Pavlik & Anderson 2005, Cognitive Science
29:559-586; form m = ln sum t_j^(-d_j), d_j = c e^(m_(j-1)) + a, p = 1 / (1 + e^((tau - m) / s)); the values
of a, c, tau, s from memory). So the plan cannot win by knowing its learner.
"""

from collections.abc import Sequence
from dataclasses import dataclass, field
from math import exp, log
from random import Random

DECAY = 0.177
SCALE = 0.217
THRESHOLD = -0.704
NOISE = 0.255
BETWEEN = 0.025
"""Time between sittings counts so much less than time within one (same paper, from memory)."""
DAY_S = 86_400.0


@dataclass(slots=True, kw_only=True)
class Trace:
    """One fact in one head: when it was presented, in seconds of felt time, and how fast each decays.

    `ease` is added to its activation: some facts are easier, some people quicker.
    """

    ease: float = 0.0
    times: list[float] = field(default_factory=list)
    decays: list[float] = field(default_factory=list)


def activation(trace: Trace, at: float) -> float:
    """The activation at a time after every presentation; minus infinity if there was none."""
    shares = [max(at - time, 1.0) ** -decay for time, decay in zip(trace.times, trace.decays, strict=True)]
    return log(sum(shares)) + trace.ease if shares else float("-inf")


def chance(trace: Trace, at: float) -> float:
    """The chance to recall it then."""
    return 1.0 / (1.0 + exp(min((THRESHOLD - activation(trace, at)) / NOISE, 700.0)))


def present(trace: Trace, at: float) -> None:
    """Show it: by being recalled, or by reading the record."""
    before = activation(trace, at)
    trace.decays.append(DECAY + (SCALE * exp(before) if trace.times else 0.0))
    trace.times.append(at)


def felt(day: int, second: float) -> float:
    """Felt time of a second in a day's sitting."""
    return day * DAY_S * BETWEEN + second


def learners(count: int, facts: int, seed: int) -> list[list[Trace]]:
    """So many learners, each with facts that were missed on day 0 and whose record was read then.

    Facts differ in ease by about as much as items differ in difficulty (1.4 logits), learners by one logit.
    Before that day each fact was met up to four times within a month: a miss may be a slip, or never learned.
    """
    random = Random(f"learners/{seed}")  # noqa: S311 -- to be repeatable, not secret
    return [_learner(facts, random) for _ in range(count)]


def recalled(traces: Sequence[Trace], day: int) -> float:
    """The share that is recalled on a day."""
    return sum(chance(trace, felt(day, 0.0)) for trace in traces) / len(traces)


def _learner(facts: int, random: Random) -> list[Trace]:
    quick = random.gauss(0.0, NOISE)
    traces = []
    for place in range(facts):
        trace = Trace(ease=quick + random.gauss(0.0, 1.4 * NOISE))
        met = sorted((random.uniform(1, 30) for _ in range(random.randint(0, 4))), reverse=True)
        for days_before in met:
            present(trace, -days_before * DAY_S * BETWEEN)
        present(trace, felt(0, place * 40.0))
        traces.append(trace)
    return traces
