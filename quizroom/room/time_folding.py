"""What an event about time factors changes."""

from dataclasses import replace

from quizroom.room.clock import later
from quizroom.room.roster import roster_of
from quizroom.room.state import Room
from quizroom.room.time_events import OwnTimeReturned, TimeEvent, TimeFactorSet, TimeLinkMade
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
            longer = replace(current, closes_at=later(current.closes_at, event.ms), orders=orders)
            return replace(
                room, rounds=(*room.rounds[: event.round - 1], longer, *room.rounds[event.round :])
            )


def without_links_of(room: Room, player: str) -> Room:
    """The room in which nothing tells which link this player came with."""
    links = {
        link: replace(made, player="") if made.player == player else made
        for link, made in room.time_links.items()
    }
    return replace(room, time_links=links)


def _with_factor(room: Room, event: TimeFactorSet) -> Room:
    links = room.time_links
    if event.link in links:
        links = {**links, event.link: replace(links[event.link], player=event.player)}
    known = room.players.get(event.player)
    if known is None:  # only in a log from which they were sent out
        return replace(room, time_links=links)
    player = replace(known, factor_percent=event.factor_percent)
    return replace(room, time_links=links, players=roster_of(room.players).with_player(player))
