"""Stations in a file: each item that was shown stands there as a round like any other."""

from collections.abc import Iterator, Sequence

from quizroom.room.bench_events import BenchAnswered
from quizroom.room.events import AnswerAccepted, Event, RoundClosed, RoundOpened
from quizroom.room.station_events import (
    BellRung,
    StationAnswered,
    StationShown,
    StationsOpened,
    StationTimeAdded,
)


def without_stations(log: Sequence[Event]) -> Iterator[Event]:
    """The log, in which each item of stations is a round that was opened, answered and closed."""
    said: dict[int, list[StationAnswered]] = {}
    opened_at = None
    for event in log:
        match event:
            case StationsOpened():
                opened_at = event.at
            case StationAnswered():
                said.setdefault(event.round, []).append(event)
            case StationShown():
                yield RoundOpened(round=event.round, at=opened_at or event.at, closes_at=None)
                yield from map(_as_in_round, said.pop(event.round, ()))
                yield RoundClosed(round=event.round, cause="host", at=event.at)
            case BellRung() | StationTimeAdded():
                pass
            case _:
                yield event


def _as_in_round(said: StationAnswered) -> AnswerAccepted | BenchAnswered:
    if said.bench:
        return BenchAnswered(
            bench=said.bench,
            player=said.player,
            round=said.round,
            choice=said.choice,
            typed=said.typed,
            at=said.at,
        )
    return AnswerAccepted(
        player=said.player,
        round=said.round,
        choice=said.choice,
        typed=said.typed,
        at=said.at,
        certainty=said.certainty,
    )
