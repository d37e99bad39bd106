"""Orders about more time for single players, and what follows from them."""

from datetime import datetime, timedelta

from quizroom.room import taking_time
from quizroom.room.events import Event
from quizroom.room.own_time import (
    can_keep_own_time,
    hides_counts,
    later_by_grace,
    may_have_own_time,
    own_clocks,
)
from quizroom.room.refusals import Refused
from quizroom.room.state import Room
from quizroom.room.time_commands import (
    BringTime,
    MakeTimeLink,
    SetTimeFactor,
    TakeTime,
    TakeTimeAlways,
    TimeCommand,
)
from quizroom.room.time_events import OwnTimeReturned, TimeFactorSet, TimeLinkMade


def decide(room: Room, command: TimeCommand, now: datetime) -> tuple[Event, ...]:
    """The events of such an order."""
    if room.phase == "finished":
        raise Refused("finished")
    match command:
        case SetTimeFactor():
            return _set(room, command)
        case MakeTimeLink():
            return _make_link(room, command)
        case BringTime():
            return _bring(room, command)
        case TakeTime():
            return taking_time.take(room, command, now)
        case TakeTimeAlways():
            return taking_time.take_always(room, command, now)


def give_back_own_time(room: Room, ms: int, order: str, now: datetime) -> tuple[Event, ...]:
    """What an outage that ends now took from those whose own time was running in the closed round.

    What was over before it stays over, since the outage is not longer than what has passed.
    """
    if not may_have_own_time(room) or ms <= 0 or (order and order in room.rounds[-1].orders):
        return ()
    began = now - timedelta(milliseconds=ms)
    ends = [clock.closes_at for _, clock in own_clocks(room) if clock.closes_at is not None]
    ran = any(began < later_by_grace(closes_at) for closes_at in ends)
    if not ran and not room.plan.players_take_time:
        return ()
    return (OwnTimeReturned(round=len(room.rounds), ms=ms, order=order, at=now),)


def _set(room: Room, command: SetTimeFactor) -> tuple[Event, ...]:
    if command.player not in room.players:
        raise Refused("no_such_player")
    if room.players[command.player].factor_percent == command.factor_percent:
        return ()
    if command.factor_percent != 100:
        _refuse_without_holding(room)
    return (TimeFactorSet(player=command.player, factor_percent=command.factor_percent),)


def _make_link(room: Room, command: MakeTimeLink) -> tuple[Event, ...]:
    if command.link in room.time_links:
        return ()
    _refuse_without_holding(room)
    return (TimeLinkMade(link=command.link, factor_percent=command.factor_percent),)


def _bring(room: Room, command: BringTime) -> tuple[Event, ...]:
    if command.player not in room.players:
        raise Refused("no_such_player")
    link = room.time_links.get(command.link)
    if link is None or link.player not in ("", command.player):
        raise Refused("bad_time_link")
    if link.player:
        return ()
    # Also where results are not held any more: the desk then shows that somebody's time does not count.
    return (TimeFactorSet(player=command.player, factor_percent=link.factor_percent, link=command.link),)


def _refuse_without_holding(room: Room) -> None:
    if not can_keep_own_time(room.plan):
        raise Refused("no_own_time")
    if not (room.holds_results or hides_counts(room)):
        raise Refused("hold_results_first")
