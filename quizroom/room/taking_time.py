"""Orders of players who take more time by themselves: once in a round, or in every round.

Source of what they must be able to do: WCAG 2.2, success criterion 2.2.1 "Timing Adjustable" (level A).
"""

from datetime import datetime

from quizroom.room.clock import later
from quizroom.room.events import Event
from quizroom.room.opened import opened_round
from quizroom.room.own_time import (
    can_keep_own_time,
    hides_counts,
    later_by_grace,
    own_clock,
    times_taken,
)
from quizroom.room.refusals import Refused
from quizroom.room.state import Plan, Room
from quizroom.room.time_commands import TakeTime, TakeTimeAlways
from quizroom.room.time_events import AlwaysTimeSet, TimeTaken
from quizroom.room.time_state import LATE_MS, MOST_TIMES


def may_take_time(plan: Plan) -> bool:
    """Whether players may take more time in such a review, as soon as results are held."""
    return plan.players_take_time and can_keep_own_time(plan)


def offers_time(room: Room) -> bool:
    """Whether players may take more time, in the current round or in those to come: the same for all."""
    holds = room.holds_results or hides_counts(room)
    return may_take_time(room.plan) and holds and room.phase != "finished"


def last_taking(room: Room, player: str) -> datetime | None:
    """Until when a player may take more time in the current round; None if no clock runs."""
    if not room.rounds:
        return None
    clock = own_clock(room, player)
    return later(room.rounds[-1].closes_at if clock is None else clock.closes_at, LATE_MS)


def take(room: Room, command: TakeTime, now: datetime) -> tuple[Event, ...]:
    """Take more time in the current round; what was taken before changes nothing."""
    if command.player not in room.players:
        raise Refused("no_such_player")
    current = opened_round(room, command.round)
    if current.number < room.players[command.player].from_round:
        raise Refused("no_such_round")
    taken = current.times_taken_again if command.again else current.times_taken
    if command.time <= taken.get(command.player, 0):
        return ()
    _refuse_late(room, command, now)
    if command.time != times_taken(current, command.player) + 1 or command.time > MOST_TIMES:
        raise Refused("bad_time")
    return (
        TimeTaken(player=command.player, round=command.round, time=command.time, at=now, again=command.again),
    )


def take_always(room: Room, command: TakeTimeAlways, now: datetime) -> tuple[Event, ...]:
    """Take more time in every round, or stop doing so; it counts as soon as results are held."""
    if command.player not in room.players:
        raise Refused("no_such_player")
    if command.on == (room.players[command.player].always_since is not None):
        return ()
    if command.on:
        _refuse_where_it_is_the_hosts(room)
    return (AlwaysTimeSet(player=command.player, on=command.on, at=now),)


def _refuse_late(room: Room, command: TakeTime, now: datetime) -> None:
    _refuse_where_it_is_the_hosts(room)
    current = room.rounds[command.round - 1]
    asked_now = command.round == len(room.rounds) and command.again == (current.again_at is not None)
    if not asked_now or room.phase == "talking" or current.shown_at is not None:
        raise Refused("too_late")
    if not hides_counts(room):
        raise Refused("ask_host_for_time")
    last = last_taking(room, command.player)
    if last is not None and now >= later_by_grace(last):
        raise Refused("too_late")


def _refuse_where_it_is_the_hosts(room: Room) -> None:
    if not can_keep_own_time(room.plan):
        raise Refused("no_own_time")
    if not room.plan.players_take_time:
        raise Refused("ask_host_for_time")
