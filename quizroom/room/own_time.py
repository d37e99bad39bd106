"""A player's own time: with a time factor they may answer on after the round has closed for the rest.

The round closes for everybody at its one deadline, and its result is held. Until the host shows it, whoever
has a factor may answer up to a deadline of their own. Nobody else can tell, because in such a review no
count of answers is told and no version counts them (`is_untold`).
"""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime, timedelta

from quizroom.room.clock import GRACE_MS, later
from quizroom.room.events import AnswerAccepted, Event
from quizroom.room.holding import is_held
from quizroom.room.state import Plan, Player, Room, Round
from quizroom.room.time_events import OwnTimeReturned, TimeFactorSet, TimeLinkMade
from quizroom.room.time_state import FactorPercent

SECOND_MS = 1000


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnClock:
    """The round's clock as one player has it: running up to `closes_at`, or standing with `left_ms`."""

    limit_ms: int
    closes_at: datetime | None
    left_ms: int | None
    paused: bool


def own_limit_ms(limit_ms: int, factor_percent: FactorPercent) -> int:
    """The length of a round for a player, in whole seconds, rounded up: 45 s at 1.5 are 68 s.

    Source of the example: the trade's timing rule (reading time, 10 s, 3 s an option; times 1.5 or 2).
    """
    return -(-limit_ms * factor_percent // (100 * SECOND_MS)) * SECOND_MS


def can_keep_own_time(plan: Plan) -> bool:
    """Whether time factors can mean anything in such a review.

    Not without a limit, not without a host to hold results, and not where benches hand in together: there the
    others already talk about the item, nor at stations, where all move on together.
    """
    benches = plan.benches
    goes_together = benches is not None and (benches.answers or benches.stations)
    return plan.timing != "untimed" and plan.group is None and not goes_together


def hides_counts(room: Room) -> bool:
    """Whether nobody but the desk may know how many have answered, lest one more come after the deadline.

    So it is in a round whose result will be held, or is, also while the class talks and answers again.
    """
    held = room.holds_results if room.phase == "answering" else is_held(room)
    return held and can_keep_own_time(room.plan)


def own_clock(room: Room, player: str) -> OwnClock | None:
    """The player's own clock of the current round; None where the clock of all is theirs too."""
    seated = room.players.get(player)
    if seated is None or seated.factor_percent == 100 or room.phase == "talking" or not hides_counts(room):
        return None
    return _clock_of(room.rounds[-1], seated)


def takes_answer(room: Room, asked: Round, player: str, now: datetime, *, again: bool) -> bool:
    """Whether the player may still answer this round, or answer it again, by their own clock.

    A standing clock is never over.
    """
    asked_now = asked.number == len(room.rounds) and again == (asked.again_at is not None)
    clock = own_clock(room, player) if asked_now else None
    return clock is not None and (clock.closes_at is None or now < later_by_grace(clock.closes_at))


def later_by_grace(closes_at: datetime) -> datetime:
    """When answers for this deadline are too late."""
    return closes_at + timedelta(milliseconds=GRACE_MS)


def own_clocks(room: Room) -> Iterator[tuple[Player, OwnClock]]:
    """Everybody who has a clock of their own, with it."""
    if hides_counts(room):
        for player in room.players.values():
            clock = own_clock(room, player.id)
            if clock is not None:
                yield player, clock


def may_have_own_time(room: Room) -> bool:
    """Whether an outage from now on could cost somebody time after the round has closed."""
    return room.phase == "closed" and any(True for _ in own_clocks(room))


def is_untold(room: Room, event: Event) -> bool:
    """Whether an event that happens to this room must be noticed by nobody but the desk and its player."""
    match event:
        case TimeFactorSet() | TimeLinkMade() | OwnTimeReturned():
            return True
        case AnswerAccepted():
            return hides_counts(room)
        case _:
            return False


def told_version(room: Room) -> int:
    """The version that seats and walls hear of: it counts only what all may notice."""
    return room.version - room.untold


def _clock_of(current: Round, player: Player) -> OwnClock | None:
    if current.limit_ms is None or current.number < player.from_round:
        return None
    limit = own_limit_ms(current.limit_ms, player.factor_percent)
    longer = limit - current.limit_ms
    return OwnClock(
        limit_ms=limit,
        closes_at=later(current.closes_at, longer),
        left_ms=None if current.left_ms is None else current.left_ms + longer,
        paused=current.paused,
    )
