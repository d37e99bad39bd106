"""A trial: the same learners and the same number of looks, spent by the plan and in other ways."""

from collections.abc import Callable, Sequence
from copy import deepcopy
from dataclasses import dataclass
from datetime import UTC, date, datetime, timedelta
from random import Random
from statistics import fmean

from quizroom.second_look.knowing import Known, after_sighting, known_facts
from quizroom.second_look.memory import Evidence
from quizroom.second_look.plan import Aim, choose, due_on
from quizroom.second_look.sighting import Sighting
from quizroom.second_look.simulate import Trace, chance, felt, learners, present, recalled

LOOK_S = 30
OPTIONS = 4
BEGIN = datetime(2031, 10, 1, 18, 0, tzinfo=UTC)


@dataclass(frozen=True, slots=True, kw_only=True)
class Setting:
    """What is to be learned until when: facts missed, days to the practical, minutes a day."""

    facts: int
    days: int
    minutes: int
    learners: int = 24
    seed: int = 1


@dataclass(frozen=True, slots=True, kw_only=True)
class Outcome:
    """The mean share recalled on the day, 0 to 1, by how the same looks were spent, and how many they were.

    `massed`: all in one sitting on the first day. `from_the_top`: the list in its order, each day anew.
    `in_rotation`: the list in its order, each day going on where the day before ended. `untouched`: no looks.
    """

    looks: float
    plan: float
    in_rotation: float
    from_the_top: float
    massed: float
    untouched: float


def compare(setting: Setting) -> Outcome:
    """Let simulated learners go through a setting in each way."""
    rows = [_one(traces, setting, number) for number, traces in enumerate(_learners(setting))]
    return Outcome(
        looks=fmean(row.looks for row in rows),
        plan=fmean(row.plan for row in rows),
        in_rotation=fmean(row.in_rotation for row in rows),
        from_the_top=fmean(row.from_the_top for row in rows),
        massed=fmean(row.massed for row in rows),
        untouched=fmean(row.untouched for row in rows),
    )


def _learners(setting: Setting) -> list[list[Trace]]:
    return learners(setting.learners, setting.facts, setting.seed)


def _one(traces: Sequence[Trace], setting: Setting, number: int) -> Outcome:
    heads = [deepcopy(list(traces)) for _ in range(4)]
    planned, rotated, topped, massed = heads
    a_day = follow_plan(planned, setting, Random(f"answers/{setting.seed}/{number}"))  # noqa: S311 -- repeatable
    total = sum(a_day)
    order = iter(range(total))
    for day, count in enumerate(a_day, 1):
        for place in range(count):
            at = felt(day, place * LOOK_S)
            present(rotated[next(order) % len(rotated)], at)
            present(topped[place % len(topped)], at)
    for place in range(total):
        present(massed[place % len(massed)], felt(1, place * LOOK_S))
    return Outcome(
        looks=float(total),
        plan=recalled(planned, setting.days),
        in_rotation=recalled(rotated, setting.days),
        from_the_top=recalled(topped, setting.days),
        massed=recalled(massed, setting.days),
        untouched=recalled(traces, setting.days),
    )


def follow_plan(traces: Sequence[Trace], setting: Setting, random: Random) -> list[int]:
    """Answer what the plan brings back, day by day; how many looks each day took."""
    aim = Aim(exam_on=_day(setting.days), seconds_a_day=setting.minutes * 60)
    known = known_facts(_sighting(str(number), BEGIN, right=False) for number in range(len(traces)))
    looks = []
    for day in range(1, setting.days):
        now = BEGIN + timedelta(days=day)
        chosen = choose(_due(known, aim, _day(day)), now=now, seconds=aim.seconds_a_day)
        for place, one in enumerate(chosen):
            right = _answered(traces[int(one.fact)], felt(day, place * LOOK_S), random.random)
            known[one.fact] = after_sighting(one, _sighting(one.fact, now, right=right))
        looks.append(len(chosen))
    return looks


def _answered(trace: Trace, at: float, draw: Callable[[], float]) -> bool:
    """Whether the answer is right, by recall or by guessing; its record is read in either case."""
    right = draw() < chance(trace, at) or draw() < 1 / OPTIONS
    present(trace, at)
    return right


def _due(known: dict[str, Known], aim: Aim, today: date) -> list[Known]:
    days = ((due_on(one, one.seen_at.date(), aim), one) for one in known.values())
    return [one for day, one in days if day is not None and day <= today]


def _sighting(fact: str, at: datetime, *, right: bool) -> Sighting:
    return Sighting(
        fact=fact,
        direction="",
        at=at,
        evidence=Evidence(right=right, by_guessing=1 / OPTIONS),
        missed=not right,
        muscle="",
        seconds=LOOK_S,
        origin="",
    )


def _day(number: int) -> date:
    return BEGIN.date() + timedelta(days=number)
