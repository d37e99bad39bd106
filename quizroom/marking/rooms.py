"""The marks of a whole room."""

from quizroom.marking.model import RoomMarks, RoundMarks
from quizroom.marking.rounds import as_second, counts, marks_of_round
from quizroom.marking.totals import bench_totals, totals_of
from quizroom.room.state import Room


def marks_of_room(room: Room, known: RoomMarks | None = None) -> RoomMarks:
    """Mark every round; rounds whose answers are those of `known` are not marked again."""
    old = known.rounds if known is not None else ()
    rounds = tuple(
        marks_of_round(current, old[index] if index < len(old) else None)
        for index, current in enumerate(room.rounds)
    )
    counted = [
        (current, marks) for current, marks in zip(room.rounds, rounds, strict=True) if counts(current)
    ]
    totals = totals_of(room, counted, known)
    return RoomMarks(
        rounds=rounds,
        counted=tuple(marks for _, marks in counted),
        totals=totals,
        benches=bench_totals(room, counted),
        seconds=_second_marks(room, known),
        order=tuple(sorted(totals[player].marks for player in room.players)) if counted else (),
    )


def _second_marks(room: Room, known: RoomMarks | None) -> tuple[RoundMarks | None, ...]:
    old = known.seconds if known is not None else ()
    return tuple(
        marks_of_round(as_second(current), old[index] if index < len(old) else None)
        if current.second_answers
        else None
        for index, current in enumerate(room.rounds)
    )
