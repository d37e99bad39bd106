"""Entries of the log, made by hand."""

from datetime import datetime

from quizroom.room.events import DoorOpened, Event, ReviewEnded, ReviewPrepared, StandingsSet
from quizroom.service.ports import Entry
from tests.room.sample_items import one_best
from tests.room.samples import NOON, after, plan

ON, OFF = StandingsSet(on=True), StandingsSet(on=False)


def laid_out(room: str, *, host: str = "owner", at: datetime = NOON) -> Entry:
    event = ReviewPrepared(room=room, host=host, plan=plan(), items=(one_best(),), at=at)
    return Entry(room=room, version=1, event=event)


def entry(room: str, version: int, event: Event = ON) -> Entry:
    return Entry(room=room, version=version, event=event)


def opened(room: str, code: str, version: int = 2) -> Entry:
    return entry(room, version, DoorOpened(door_code=code, at=after(1)))


def ended(room: str, version: int) -> Entry:
    return entry(room, version, ReviewEnded(at=after(2)))
