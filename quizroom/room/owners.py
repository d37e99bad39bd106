"""Whose history a seat belongs to, and forgetting who sat in it."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import datetime
from itertools import count

from quizroom.room.bench_events import BenchAnswered, BenchRenamed
from quizroom.room.change_events import ItemFlagged
from quizroom.room.credit_events import EntryAssigned, EntryClaimed
from quizroom.room.events import AnswerAccepted, Event, PlayerRenamed, SeatEntered
from quizroom.room.folding import replay
from quizroom.room.former_words import known_words
from quizroom.room.handles import same_handle
from quizroom.room.owner_commands import ForgetPlayer, LinkSeat, OwnerCommand
from quizroom.room.owner_events import OwnerEvent, PlayerForgotten, SeatLinked
from quizroom.room.refusals import Refused
from quizroom.room.state import Room
from quizroom.room.station_events import StationAnswered
from quizroom.room.station_folding import round_answered
from quizroom.room.time_events import AlwaysTimeSet, TimeFactorSet, TimeTaken

FORMER = "Former player"


def decide(room: Room, command: OwnerCommand, now: datetime) -> tuple[Event, ...]:
    """The events of such an order; they are taken in every phase, long after the review too."""
    match command:
        case LinkSeat():
            return _link(room, command, now)
        case ForgetPlayer():
            return _forget(room, command, now)


def redacted(events: Sequence[Event], deed: OwnerEvent) -> tuple[Event, ...]:
    """The events of a room, in order from its first, without what `deed` takes out of the past.

    Their number, their order and all marks stay the same.
    """
    if isinstance(deed, SeatLinked):
        return tuple(event if deed.owner else _without_owner(event, deed.player) for event in events)
    room = replay(events)
    if room is None:
        return tuple(events)
    return tuple(
        _without_bench_words(event, deed, room, bench)
        if isinstance(event, BenchAnswered | StationAnswered)
        else _without_identity(event, deed, room)
        for event, bench in zip(events, _benches_as_named_now(events), strict=True)
    )


def _link(room: Room, command: LinkSeat, now: datetime) -> tuple[Event, ...]:
    player = room.players.get(command.player)
    if player is None:
        raise Refused("no_such_player")
    if player.owner == command.owner:
        return ()
    return (SeatLinked(player=player.id, owner=command.owner, at=now),)


def _forget(room: Room, command: ForgetPlayer, now: datetime) -> tuple[Event, ...]:
    player = room.players.get(command.player)
    if player is not None and not player.key_hash and not player.owner:
        return ()
    # Somebody who was sent out is in the log all the same.
    return (PlayerForgotten(player=command.player, handle=_former_handle(room), at=now),)


def _former_handle(room: Room) -> str:
    taken = [player.handle for player in room.players.values()]
    names = (f"{FORMER} {number}" for number in count(1))
    return next(name for name in names if not any(same_handle(name, other) for other in taken))


def _without_owner(event: Event, player: str) -> Event:
    match event:
        case SeatEntered() | SeatLinked() if event.player == player and event.owner:
            return replace(event, owner="")
        case _:
            return event


def _without_identity(event: Event, deed: PlayerForgotten, room: Room) -> Event:
    match event:
        case SeatEntered() if event.player == deed.player:
            return replace(event, handle=deed.handle, key_hash="", owner="")
        case PlayerRenamed() | PlayerForgotten() if event.player == deed.player:
            return replace(event, handle=deed.handle)
        case SeatLinked() if event.player == deed.player:
            return replace(event, owner="")
        case TimeFactorSet() if event.player == deed.player:
            return replace(event, factor_percent=100, link="")
        case TimeTaken() if event.player == deed.player:
            return replace(event, time=0)
        case AlwaysTimeSet() if event.player == deed.player:
            return replace(event, on=False)
        case EntryClaimed() | EntryAssigned() if event.player == deed.player:
            return replace(event, entry="")
        case ItemFlagged() if event.player == deed.player:
            return replace(event, text="")
        case AnswerAccepted() if event.player == deed.player and event.typed:
            return replace(event, typed=known_words(event.typed, room.rounds[event.round - 1]))
        case _:
            return event


def _without_bench_words(
    event: BenchAnswered | StationAnswered, deed: PlayerForgotten, room: Room, bench: str
) -> Event:
    """The answer without the player's words, or those of the `bench` at which the player sits."""
    theirs = event.player == deed.player or (bench and bench == room.benches.get(deed.player))
    if not theirs or not event.typed:
        return event
    return replace(event, typed=known_words(event.typed, round_answered(room, event.round)))


def _benches_as_named_now(events: Sequence[Event]) -> tuple[str, ...]:
    """For each event the bench that it is about by its newest name; empty if it is about none."""
    now: dict[str, str] = {}
    found: list[str] = []
    for event in reversed(events):
        if isinstance(event, BenchRenamed):
            now[event.bench] = now.get(event.name, event.name)
        bench = event.bench if isinstance(event, BenchAnswered | StationAnswered) else ""
        found.append(now.get(bench, bench))
    return tuple(reversed(found))
