"""What an event changes in the run of a review without a host."""

from dataclasses import replace
from datetime import datetime

from quizroom.room.clock import later, milliseconds_between
from quizroom.room.events import Event, PlayerRemoved, RecordShown, RoundClosed, RoundOpened, SeatEntered
from quizroom.room.group_events import PauseAsked, PauseEnded, PlayerLeft, PlayerReady, PlayerReturned
from quizroom.room.group_state import GroupRun
from quizroom.room.state import Room


def run_after(room: Room, run: GroupRun, event: Event) -> GroupRun:
    """The run after `event`; `room` is what the event has made of everything else."""
    match event:
        case PlayerReady():
            return replace(run, ready=run.ready | {event.player}, alone=run.alone or event.alone)
        case PauseAsked():
            return _paused(run, event.at)
        case PauseEnded():
            until = None if run.reading_left_ms is None else later(event.at, run.reading_left_ms)
            return replace(run, paused=False, reading_until=until, reading_left_ms=None)
        case PlayerLeft():
            return _left(room, run, event)
        case PlayerReturned():
            return _returned(room, run, event)
        case SeatEntered():
            return replace(run, empty_since=None)
        case PlayerRemoved():
            return replace(run, away=run.away - {event.player}, ready=run.ready - {event.player})
        case RoundOpened() | RoundClosed():
            return GroupRun(away=run.away, empty_since=run.empty_since)
        case RecordShown():
            return replace(run, reading_until=_reading_until(room, event.at))
        case _:
            return run


def _paused(run: GroupRun, at: datetime) -> GroupRun:
    left = None if run.reading_until is None else milliseconds_between(at, run.reading_until)
    return replace(run, paused=True, reading_until=None, reading_left_ms=left)


def _left(room: Room, run: GroupRun, event: PlayerLeft) -> GroupRun:
    away = run.away | {event.player}
    return replace(run, away=away, empty_since=event.at if away >= room.players.keys() else run.empty_since)


def _returned(room: Room, run: GroupRun, event: PlayerReturned) -> GroupRun:
    back = replace(run, away=run.away - {event.player}, empty_since=None)
    if run.empty_since is None or room.phase != "explained" or run.paused:
        return back
    # Nobody was there to read: whoever comes back first finds the record, not a round that opens at once.
    return replace(back, reading_until=_reading_until(room, event.at))


def _reading_until(room: Room, shown_at: datetime) -> datetime | None:
    rules = room.plan.group
    return None if rules is None or rules.reading_s is None else later(shown_at, rules.reading_s * 1000)
