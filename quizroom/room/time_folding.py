"""What an event about more time for single players changes."""

from dataclasses import replace
from typing import Any

from quizroom.room.clock import later
from quizroom.room.roster import roster_of
from quizroom.room.state import Room, Round
from quizroom.room.time_events import (
    AlwaysTimeSet,
    OwnTimeReturned,
    TimeEvent,
    TimeFactorSet,
    TimeLinkMade,
    TimeTaken,
)
from quizroom.room.time_state import TimeLink


def after(room: Room, event: TimeEvent) -> Room:
    """The room after such an event."""
    match event:
        case TimeFactorSet():
            return _with_factor(room, event)
        case TimeLinkMade():
            made = TimeLink(factor_percent=event.factor_percent)
            return replace(room, time_links={**room.time_links, event.link: made})
        case OwnTimeReturned():
            current = room.rounds[event.round - 1]
            orders = (*current.orders, event.order) if event.order else current.orders
            return _with_round(
                room, replace(current, closes_at=later(current.closes_at, event.ms), orders=orders)
            )
        case TimeTaken():
            return _with_round(room, _taken(room.rounds[event.round - 1], event))
        case AlwaysTimeSet():
            return _with_player(room, event.player, always_since=event.at if event.on else None)


def without_time_of(room: Room, player: str) -> Room:
    """The room in which nothing tells which link this player came with, nor what time they took."""
    links = {
        link: replace(made, player="") if made.player == player else made
        for link, made in room.time_links.items()
    }
    rounds = tuple(without_times_taken(one, player) for one in room.rounds)
    return replace(room, time_links=links, rounds=rounds)


def without_times_taken(current: Round, player: str) -> Round:
    """The round in which this player took no more time; one that holds nothing of it stays the same."""
    if player not in current.times_taken and player not in current.times_taken_again:
        return current
    first, again = (
        {one: times for one, times in taken.items() if one != player}
        for taken in (current.times_taken, current.times_taken_again)
    )
    return replace(current, times_taken=first, times_taken_again=again)


def _with_factor(room: Room, event: TimeFactorSet) -> Room:
    links = room.time_links
    if event.link in links:
        links = {**links, event.link: replace(links[event.link], player=event.player)}
    return _with_player(replace(room, time_links=links), event.player, factor_percent=event.factor_percent)


def _with_player(room: Room, player: str, **changes: Any) -> Room:
    known = room.players.get(player)
    if known is None:  # only in a log from which they were sent out
        return room
    return replace(room, players=roster_of(room.players).with_player(replace(known, **changes)))


def _with_round(room: Room, changed: Round) -> Room:
    number = changed.number
    return replace(room, rounds=(*room.rounds[: number - 1], changed, *room.rounds[number:]))


def _taken(current: Round, event: TimeTaken) -> Round:
    before = current.times_taken_again if event.again else current.times_taken
    taken = {player: times for player, times in before.items() if player != event.player}
    if event.time > 0:
        taken[event.player] = event.time
    return replace(current, times_taken_again=taken) if event.again else replace(current, times_taken=taken)
