"""How the standings stand: places by marks, of players and of benches."""

from bisect import bisect_right
from dataclasses import dataclass

from quizroom.marking.model import RoomMarks
from quizroom.room.state import Room


@dataclass(frozen=True, slots=True, kw_only=True)
class Standing:
    """A line of the standings; players with equal marks share a place."""

    place: int
    player: str
    handle: str
    marks: float
    of: int


@dataclass(frozen=True, slots=True, kw_only=True)
class BenchStanding:
    """A line of the standings by bench."""

    place: int
    bench: str
    marks: float
    of: int


def bench_standings(marks: RoomMarks) -> tuple[BenchStanding, ...]:
    """All benches by marks, then by name; equal marks share a place."""
    ordered = sorted(marks.benches.items(), key=lambda one: (-one[1].marks, one[0].casefold(), one[0]))
    places = {total.marks: place for place, (_, total) in reversed(list(enumerate(ordered, 1)))}
    return tuple(
        BenchStanding(place=places[total.marks], bench=bench, marks=total.marks, of=total.of)
        for bench, total in ordered
    )


def standings(room: Room, marks: RoomMarks) -> tuple[Standing, ...]:
    """All players by marks, then by handle and id, so that the order is total and stable."""
    players = sorted(
        room.players.values(),
        key=lambda player: (-marks.totals[player.id].marks, player.handle.casefold(), player.id),
    )
    rows: list[Standing] = []
    for index, player in enumerate(players):
        total = marks.totals[player.id]
        shares = rows and rows[-1].marks == total.marks
        rows.append(
            Standing(
                place=rows[-1].place if shares else index + 1,
                player=player.id,
                handle=player.handle,
                marks=total.marks,
                of=total.of,
            )
        )
    return tuple(rows)


def place_of(player: str, marks: RoomMarks) -> int:
    """The place of one player in the standings, without putting all of them in order."""
    return 1 + len(marks.order) - bisect_right(marks.order, marks.totals[player].marks)
