"""Players who were sent out, as a file tells them: not at all, even if they came back to their seat since."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import Any

from quizroom.exchange.review_file.steps import NOBODY
from quizroom.room.bench_events import BenchAnswered, BenchesDrawn
from quizroom.room.events import Event, PlayerRemoved
from quizroom.room.station_events import StationAnswered


def without_sent_out(log: Sequence[Event]) -> Iterator[Event]:
    """The log without what players did before they were sent out; what they said for a bench stays its own.

    Who comes back under the same id begins anew, as in the room. Else both their seats would be told by the
    one handle that they have at the end, and the file could not be read.
    """
    left = {event.player: place for place, event in enumerate(log) if isinstance(event, PlayerRemoved)}
    for place, event in enumerate(log):
        gone = {player for player, until in left.items() if place <= until}
        kept = _without(event, gone) if gone else event
        if kept is not None:
            yield kept


def _without(event: Event, gone: set[str]) -> Event | None:
    if isinstance(event, BenchesDrawn):
        return replace(event, seats=tuple(seat for seat in event.seats if seat.player not in gone))
    some: Any = event
    if getattr(some, "player", NOBODY) not in gone:
        return event
    if isinstance(event, BenchAnswered) or (isinstance(event, StationAnswered) and event.bench):
        return replace(event, player=NOBODY)
    return None
