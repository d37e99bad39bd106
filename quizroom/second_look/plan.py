"""The return plan: when each missed fact comes back, counted backwards from the day of the practical.

What was missed comes back the next day. What was right comes back when its predicted recall has fallen to
`FALLEN`, but within half and the whole of the gap that is best for the time left (Cepeda et al. 2008: a fifth
to two fifths of a week's delay, a twentieth to a tenth of a year's); and not at all while it will be recalled
on the day anyway. If a day is too short for all that is due, what is hardest to recall comes first.
"""

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date, datetime, timedelta
from heapq import heappop, heappush
from itertools import pairwise
from math import ceil

from quizroom.second_look.knowing import Known, hours_between, recall_of, weakest
from quizroom.second_look.memory import expected_after, hours_until

ENOUGH = 0.9
"""Recall on the day that needs no more looks; 0.8 to 0.9 is a usual aim (common practice, no source)."""
FALLEN = 0.8
"""Recall to which a fact may fall before it comes back."""
USUAL_DAYS = 28
"""How far the plan looks without a date of the practical."""
FURTHEST_DAYS = 366
GAPS: tuple[tuple[float, float], ...] = ((0.0, 0.0), (7.0, 2.0), (28.0, 5.0), (90.0, 10.0), (365.0, 27.0))
"""Days left and the best gap in days, after Cepeda et al. 2008; between them by a straight line (our own)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Aim:
    """What a plan is for. `exam_on` None: there is no date, and gaps have no upper bound."""

    exam_on: date | None
    seconds_a_day: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Sitting:
    """What one day of the plan holds."""

    day: date
    facts: tuple[Known, ...]

    @property
    def seconds(self) -> int:
        """Time for all of it."""
        return sum(known.seconds for known in self.facts)


@dataclass(frozen=True, slots=True, kw_only=True)
class Outlook:
    """The days ahead as they will probably go, and what is then known on the day of the practical."""

    sittings: tuple[Sitting, ...]
    known: Mapping[str, Known]


def last_day(aim: Aim, today: date) -> date:
    """The day for which recall is predicted: that of the practical, or four weeks from now."""
    if aim.exam_on is None or aim.exam_on < today:
        return today + timedelta(days=USUAL_DAYS)
    return min(aim.exam_on, today + timedelta(days=FURTHEST_DAYS))


def best_gap(days_left: float) -> float:
    """The gap in days between looks that serves best for a test after so many days."""
    for (left, small), (right, large) in pairwise(GAPS):
        if days_left <= right:
            return small + (large - small) * (days_left - left) / (right - left)
    return GAPS[-1][1]


def due_on(known: Known, seen_on: date, aim: Aim) -> date | None:
    """The day on which a fact comes back; None if it was never missed or needs no more looks."""
    if not known.missed:
        return None
    if known.failed:
        return seen_on + timedelta(days=1)
    dated = aim.exam_on is not None and aim.exam_on > seen_on
    left = (last_day(aim, seen_on) - seen_on).days
    if dated and recall_of(known, known.seen_at + timedelta(days=left)) >= ENOUGH:
        return None
    best = best_gap(left)
    gap = max(hours_until(weakest(known)[1], FALLEN) / 24, ceil(best / 2))
    return seen_on + timedelta(days=max(1, round(min(gap, best) if dated else gap)))


def choose(due: Iterable[Known], *, now: datetime, seconds: int) -> tuple[Known, ...]:
    """What fits into a day of so many seconds: what is hardest to recall by now comes first.

    To take what gains most until the practical would be short-sighted: a later look gains more than an
    earlier one, so that all would be left to the end. `simulate` shows it.
    """
    ranked = sorted(due, key=lambda known: (recall_of(known, now), known.fact))
    chosen: list[Known] = []
    left = seconds
    for known in ranked:
        if known.seconds <= left:
            chosen.append(known)
            left -= known.seconds
    return tuple(chosen)


def look_ahead(
    due: Sequence[tuple[date, Known]],
    aim: Aim,
    *,
    now: datetime,
    today: date,
    first_day_seconds: int,
    breathe: Callable[[], None] = lambda: None,
) -> Outlook:
    """The plan carried through day by day, as if every look went as predicted.

    Args:
        due: facts with the day on which they come back.
        aim: for what.
        now: the time of the first day's sitting; each later one is a day after.
        today: the first day.
        first_day_seconds: what is left of the first day.
        breathe: called between two days, so that a server can do something else.
    """
    end = last_day(aim, today)
    waiting: list[tuple[date, str]] = []
    known = {one.fact: one for _, one in due}
    for day, one in due:
        heappush(waiting, (max(day, today), one.fact))
    sittings: list[Sitting] = []
    for day in _days(today, end):
        breathe()
        here = now + (day - today)
        facts = [known[fact] for fact in _due_by(waiting, day)]
        budget = first_day_seconds if day == today else aim.seconds_a_day
        chosen = choose(facts, now=here, seconds=budget)
        taken = {one.fact for one in chosen}
        for one in facts:
            after = _as_predicted(one, here) if one.fact in taken else one
            known[one.fact] = after
            back = due_on(after, day, aim) if one.fact in taken else day + timedelta(days=1)
            if back is not None:
                heappush(waiting, (back, one.fact))
        if chosen:
            sittings.append(Sitting(day=day, facts=chosen))
    return Outlook(sittings=tuple(sittings), known=known)


def _days(today: date, end: date) -> Iterable[date]:
    """The days of sittings: the day of the practical itself is none."""
    return (today + timedelta(days=number) for number in range((end - today).days))


def _due_by(waiting: list[tuple[date, str]], day: date) -> list[str]:
    found: list[str] = []
    while waiting and waiting[0][0] <= day:
        found.append(heappop(waiting)[1])
    return found


def _as_predicted(known: Known, now: datetime) -> Known:
    """The fact after a look at its weakest direction that went as was to be expected."""
    direction, memory = weakest(known)
    after = expected_after(memory, hours_between(known.seen_at, now))
    return replace(known, memories={**known.memories, direction: after}, seen_at=now, failed=False)
