"""Results that are held: a round is closed, but its key, shares and marks are not told yet."""

from collections.abc import Iterable
from dataclasses import replace
from datetime import datetime

from quizroom.room.commands import HoldResults, ShowResult
from quizroom.room.events import Event, HoldingSet, ResultShown
from quizroom.room.opened import opened_round
from quizroom.room.refusals import Refused
from quizroom.room.state import Room, Round


def decide(room: Room, command: HoldResults | ShowResult, now: datetime) -> tuple[Event, ...]:
    """The events of an order about held results."""
    match command:
        case HoldResults():
            return _hold(room, command)
        case ShowResult():
            return _show(room, command, now)


def is_held(room: Room) -> bool:
    """Whether the current round is closed and its result not known yet."""
    return bool(room.rounds) and room.rounds[-1].closed_at is not None and room.rounds[-1].shown_at is None


def shown_up_to(rounds: Iterable[Round], number: int, at: datetime) -> tuple[Round, ...]:
    """The rounds, of which no closed one up to this number is held any more.

    Earlier ones go with it: whoever moves on without showing a result does not lose it for good.
    """
    return tuple(
        replace(one, shown_at=at)
        if one.number <= number and one.closed_at is not None and one.shown_at is None
        else one
        for one in rounds
    )


def _hold(room: Room, command: HoldResults) -> tuple[Event, ...]:
    if room.run is not None or room.phase == "finished":
        raise Refused("wrong_phase" if room.phase != "finished" else "finished")
    return () if room.holds_results == command.on else (HoldingSet(on=command.on),)


def _show(room: Room, command: ShowResult, now: datetime) -> tuple[Event, ...]:
    if opened_round(room, command.round).shown_at is not None:
        return ()
    if room.phase != "closed" or command.round != len(room.rounds):
        raise Refused("not_closed")
    return (ResultShown(round=command.round, at=now),)
