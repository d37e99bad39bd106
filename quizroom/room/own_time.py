"""A player's own time: with more of it they may answer on after the round has closed for the rest.

The round closes for everybody at its one deadline, and its result is held. Until the host shows it, whoever
has a factor, or took more time themselves, may answer up to a deadline of their own. Nobody else can tell,
because in such a review no count of answers is told and no version counts them (`is_untold`).
"""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime, timedelta

from quizroom.room.clock import GRACE_MS, later
from quizroom.room.events import AnswerAccepted, Event
from quizroom.room.holding import is_held
from quizroom.room.state import Plan, Player, Room, Round
from quizroom.room.time_events import AlwaysTimeSet, OwnTimeReturned, TimeFactorSet, TimeLinkMade, TimeTaken
from quizroom.room.time_state import ALWAYS_PERCENT, LATE_MS, own_limit_ms, taken_ms


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnClock:
    """The round's clock as one player has it: running up to `closes_at`, or standing with `left_ms`."""

    limit_ms: int
    closes_at: datetime | None
    left_ms: int | None
    paused: bool


def can_keep_own_time(plan: Plan) -> bool:
    """Whether more time for single players can mean anything in such a review.

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


def times_taken(current: Round, player: str) -> int:
    """How often a player took more time for what is asked now: the first answer, or the second."""
    taken = current.times_taken if current.again_at is None else current.times_taken_again
    return taken.get(player, 0)


def takes_time(room: Room, player: Player) -> bool:
    """Whether a player takes more time by themselves: in every round, or in the current one."""
    if player.always_since is not None:
        return True
    return bool(room.rounds) and times_taken(room.rounds[-1], player.id) > 0


def has_more_time(room: Room, player: Player) -> bool:
    """Whether anything may give this player a clock of their own in the current round."""
    return player.factor_percent > 100 or takes_time(room, player)


def keeps_own_clocks(room: Room) -> bool:
    """Whether anybody may have a clock of their own now."""
    return room.phase != "talking" and hides_counts(room)


def own_clock(room: Room, player: str) -> OwnClock | None:
    """The player's own clock of the current round; None where the clock of all is theirs too."""
    seated = room.players.get(player)
    if seated is None or not has_more_time(room, seated) or not keeps_own_clocks(room):
        return None
    return clock_of(room, seated)


def clock_of(room: Room, player: Player) -> OwnClock | None:
    """The same of somebody who has more time, where own clocks are kept: with thousands both are known."""
    return _clock_of(room, room.rounds[-1], player)


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
    if keeps_own_clocks(room):
        for player in room.players.values():
            clock = clock_of(room, player) if has_more_time(room, player) else None
            if clock is not None:
                yield player, clock


def still_have_time(room: Room, now: datetime) -> bool:
    """Whether somebody has a clock of their own that is not over, and has not answered."""
    answers = () if not room.rounds else _asked_for(room.rounds[-1])
    return any(
        player.id not in answers and (clock.closes_at is None or now < clock.closes_at)
        for player, clock in own_clocks(room)
    )


def may_have_own_time(room: Room) -> bool:
    """Whether an outage from now on could cost somebody time after the round has closed.

    Where players may take more time it could cost any of them, so nobody can tell from it who has more.
    """
    if room.phase != "closed" or not hides_counts(room):
        return False
    return room.plan.players_take_time or any(True for _ in own_clocks(room))


def is_untold(room: Room, event: Event) -> bool:
    """Whether an event that happens to this room must be noticed by nobody but the desk and its player."""
    match event:
        case TimeFactorSet() | TimeLinkMade() | OwnTimeReturned() | TimeTaken() | AlwaysTimeSet():
            return True
        case AnswerAccepted():
            return hides_counts(room)
        case _:
            return False


def told_version(room: Room) -> int:
    """The version that seats and walls hear of: it counts only what all may notice."""
    return room.version - room.untold


def _asked_for(current: Round) -> frozenset[str]:
    answers = current.answers if current.again_at is None else current.second_answers
    return frozenset(answers.keys())


def _clock_of(room: Room, current: Round, player: Player) -> OwnClock | None:
    if current.limit_ms is None or current.number < player.from_round:
        return None
    taken = times_taken(current, player.id) * taken_ms(current.limit_ms)
    limit = own_limit_ms(current.limit_ms, player.factor_percent) + taken
    clock = _lengthened(current, current.limit_ms, limit)
    if room.plan.players_take_time and _was_chosen_in_time(clock, player.always_since):
        always = max(limit, own_limit_ms(current.limit_ms, ALWAYS_PERCENT) + taken)
        clock = _lengthened(current, current.limit_ms, always)
    return None if clock.limit_ms == current.limit_ms else clock


def _was_chosen_in_time(clock: OwnClock, since: datetime | None) -> bool:
    """Whether more time in every round was chosen before this clock was over; a standing one never is."""
    last = later(clock.closes_at, LATE_MS)
    return since is not None and (last is None or since < last)


def _lengthened(current: Round, of_all: int, limit: int) -> OwnClock:
    longer = limit - of_all
    return OwnClock(
        limit_ms=limit,
        closes_at=later(current.closes_at, longer),
        left_ms=None if current.left_ms is None else current.left_ms + longer,
        paused=current.paused,
    )
