"""Deadlines of a round. They live in the state; whoever watches them only wakes up."""

from datetime import datetime, timedelta

from quizroom.questions.model import Item
from quizroom.room.state import Plan, Round

GRACE_MS = 750
"""How late an answer may arrive after the deadline, for its way over the network (from memory)."""


def limit_ms(plan: Plan, item: Item) -> int | None:
    """Length of a round in ms: computed with the item, fixed by the host, or None without limit.

    Where benches hand in together they get time to talk besides.
    """
    benches = plan.benches
    talk_s = benches.talk_s if benches is not None and benches.answers else 0
    match plan.timing:
        case "computed":
            return (item.seconds + talk_s) * 1000
        case "fixed":
            return (plan.seconds + talk_s) * 1000
        case "untimed":
            return None


def later(moment: datetime | None, ms: int) -> datetime | None:
    """`moment` plus `ms`; None stays None."""
    return None if moment is None else moment + timedelta(milliseconds=ms)


def deadline(now: datetime, limit: int | None) -> datetime | None:
    """When what begins now is over, by its limit in ms; None if it has none."""
    return None if limit is None else later(now, limit)


def milliseconds_between(start: datetime, end: datetime) -> int:
    """Whole milliseconds from `start` to `end`; never negative."""
    return max(0, int((end - start) / timedelta(milliseconds=1)))


def began_at(current: Round) -> datetime:
    """When the clock that is the round's now began: of the first answering, the talk, or the second."""
    return current.again_at or current.talked_at or current.opened_at


def is_over(current: Round, now: datetime) -> bool:
    """Whether the deadline and its grace have passed. A standing or missing clock is never over."""
    if current.paused or current.closes_at is None:
        return False
    return now >= current.closes_at + timedelta(milliseconds=GRACE_MS)


def closing_of(current: Round, closed_at: datetime) -> datetime | None:
    """The deadline of a round that closes now: a clock that stood runs on, for those who have more time."""
    return current.closes_at if current.left_ms is None else later(closed_at, current.left_ms)
