"""What an event changes at the stations."""

from collections.abc import Callable, Mapping
from dataclasses import replace
from datetime import datetime

from quizroom.room.clock import later, milliseconds_between
from quizroom.room.growing import with_one
from quizroom.room.state import Answer, Room, Round, Stations
from quizroom.room.station_events import (
    BellRung,
    StationAnswered,
    StationEvent,
    StationShown,
    StationsOpened,
    StationTimeAdded,
)


def after(room: Room, event: StationEvent) -> Room:
    """The room with its stations changed."""
    if isinstance(event, StationsOpened):
        return _opened(room, event)
    block = room.stations
    if block is None:
        return room
    match event:
        case StationAnswered():
            return replace(room, stations=_answered(block, event))
        case BellRung():
            return replace(room, stations=_after_bell(block, event))
        case StationTimeAdded():
            return replace(room, stations=_longer(block, event))
        case StationShown():
            return _shown(room, block, event)


def as_round(block: Stations, index: int, closed_at: datetime | None = None) -> Round:
    """An item of a block as the round that it becomes."""
    answers = block.answers[index]
    return Round(
        number=block.first + index,
        item=block.items[index],
        opened_at=block.opened_at,
        closes_at=None,
        limit_ms=block.limit_ms,
        closed_at=closed_at,
        shown_at=closed_at,
        answers=answers,
        answered_at_closing=len(answers),
        bench_answers=block.bench_answers[index],
    )


def round_answered(room: Room, number: int) -> Round:
    """A round by its number, or the item at a station that will be it."""
    block = room.stations
    if block is None or number <= len(room.rounds):
        return room.rounds[number - 1]
    return as_round(block, number - block.first)


def with_rounds(room: Room, change: Callable[[Round], Round]) -> Room:
    """The room with the answers of all its rounds, and of items at stations, changed alike."""
    rounds = tuple(change(one) for one in room.rounds)
    block = room.stations
    if block is None:
        return replace(room, rounds=rounds)
    changed = [change(as_round(block, index)) for index in range(len(block.items))]
    answers = tuple(one.answers for one in changed)
    of_benches = tuple(one.bench_answers for one in changed)
    return replace(room, rounds=rounds, stations=replace(block, answers=answers, bench_answers=of_benches))


def _opened(room: Room, event: StationsOpened) -> Room:
    nothing: tuple[Mapping[str, Answer], ...] = tuple({} for _ in room.ahead)
    block = Stations(
        first=event.round,
        items=room.ahead,
        benches=tuple(dict.fromkeys(room.benches.values())),
        turn=1,
        turn_at=event.at,
        opened_at=event.at,
        closes_at=event.closes_at,
        limit_ms=None if event.closes_at is None else milliseconds_between(event.at, event.closes_at),
        answers=nothing,
        bench_answers=nothing,
    )
    return replace(room, phase="stations", ahead=(), stations=block)


def _answered(block: Stations, event: StationAnswered) -> Stations:
    index = event.round - block.first
    answer = Answer(
        choice=event.choice,
        typed=event.typed,
        at=event.at,
        certainty=event.certainty,
        took_ms=event.took_ms,
        by=event.player if event.bench else "",
    )
    if event.bench:
        return replace(block, bench_answers=_with(block.bench_answers, index, event.bench, answer))
    return replace(block, answers=_with(block.answers, index, event.player, answer))


def _with(
    all_: tuple[Mapping[str, Answer], ...], index: int, whose: str, answer: Answer
) -> tuple[Mapping[str, Answer], ...]:
    return (*all_[:index], with_one(all_[index], whose, answer), *all_[index + 1 :])


def _after_bell(block: Stations, event: BellRung) -> Stations:
    if event.over:
        return replace(block, over=True, closes_at=None)
    limit = None if event.closes_at is None else milliseconds_between(event.at, event.closes_at)
    return replace(block, turn=event.turn + 1, turn_at=event.at, closes_at=event.closes_at, limit_ms=limit)


def _longer(block: Stations, event: StationTimeAdded) -> Stations:
    # Time given back after an outage was never part of the turn's length, as with rounds.
    grows = event.cause == "host" and block.limit_ms is not None
    limit = (block.limit_ms or 0) + event.ms if grows else block.limit_ms
    orders = (*block.orders, event.order) if event.order else block.orders
    return replace(block, closes_at=later(block.closes_at, event.ms), limit_ms=limit, orders=orders)


def _shown(room: Room, block: Stations, event: StationShown) -> Room:
    shown = as_round(block, event.round - block.first, event.at)
    rest = replace(block, shown=block.shown + 1)
    return replace(
        room,
        phase="closed",
        rounds=(*room.rounds, shown),
        stations=None if rest.shown == len(block.items) else rest,
    )
