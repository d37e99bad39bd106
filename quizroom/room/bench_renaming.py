"""Another name for a bench: its members, and what it handed in before, go with it."""

from dataclasses import replace
from datetime import datetime

from quizroom.room.bench_commands import RenameBench
from quizroom.room.bench_events import BenchRenamed
from quizroom.room.bench_state import LONGEST_BENCH
from quizroom.room.handles import same_handle, tidy_handle
from quizroom.room.refusals import Refused
from quizroom.room.state import Room, Round


def rename(room: Room, command: RenameBench, now: datetime) -> tuple[BenchRenamed, ...]:
    """The event of a new name.

    Raises:
        Refused: no such bench; a bad name, or one that another bench has or had, since the marks of two
            would be one; benches are at stations, which know them by name.
    """
    name = tidy_handle(command.name)
    if command.bench == name:
        return ()
    known = _names_so_far(room)
    if command.bench not in known:
        # The same order again finds its work done.
        if name in known:
            return ()
        raise Refused("no_such_bench")
    if room.stations is not None:
        raise Refused("at_stations")
    if len(name) > LONGEST_BENCH or not any(c.isalnum() for c in name):
        raise Refused("bad_bench")
    if any(same_handle(name, other) for other in known if other != command.bench):
        raise Refused("bench_exists")
    return (BenchRenamed(bench=command.bench, name=name, by=command.by, at=now),)


def renamed(room: Room, event: BenchRenamed) -> Room:
    """The room with the bench under its new name, in all rounds."""
    return replace(
        room,
        benches={player: _new(bench, event) for player, bench in room.benches.items()},
        rounds=tuple(_in_round(current, event) for current in room.rounds),
    )


def _names_so_far(room: Room) -> frozenset[str]:
    answered = (bench for current in room.rounds for bench in current.bench_answers)
    return frozenset((*room.benches.values(), *answered))


def _in_round(current: Round, event: BenchRenamed) -> Round:
    if event.bench not in current.bench_answers:
        return current
    answers = {_new(bench, event): answer for bench, answer in current.bench_answers.items()}
    return replace(current, bench_answers=answers)


def _new(bench: str, event: BenchRenamed) -> str:
    return event.name if bench == event.bench else bench
