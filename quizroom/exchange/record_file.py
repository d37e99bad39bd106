"""The full record of a review as CSV: one line a response.

In a review for credit each line has what the roster says of the seat, in any other the handle: no file has
both.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from quizroom.exchange.csv_files import csv_file
from quizroom.exchange.gradebook_file import marks_cell
from quizroom.service.roster_ports import RosterRow
from quizroom.views.responses import Response

COLUMNS = (
    *("round", "item id", "fact id", "direction", "stem", "options", "answer", "key", "right", "mark"),
    *("certainty", "t_ms", "attempt", "phase", "variant of key used"),
)
TIME_COLUMNS = ("time factor", "took time")
"""Who had more time: only where the host asks for it, since a file is easily passed on."""
BETWEEN = " | "


@dataclass(frozen=True, slots=True, kw_only=True)
class Seats:
    """Who sat where, by the seat's id: its number in the order of coming, and a handle or roster row."""

    numbers: Mapping[str, int]
    handles: Mapping[str, str] | None
    """None in a review for credit."""
    people: Mapping[str, RosterRow]


def record_file(
    rows: Sequence[Response], seats: Seats, *, with_time: bool = False, bom: bool = False
) -> bytes:
    """All responses; `with_time` adds who had more time, `bom` puts a byte order mark in front."""
    who = ("seat", "id", "name", "section") if seats.handles is None else ("seat", "handle")
    lines = (
        (*_who(one.player, seats), *_cells(one), *(_time_cells(one) if with_time else ())) for one in rows
    )
    return csv_file((*who, *COLUMNS, *(TIME_COLUMNS if with_time else ())), lines, bom=bom)


def _who(player: str, seats: Seats) -> tuple[str, ...]:
    number = str(seats.numbers[player])
    if seats.handles is not None:
        return (number, seats.handles[player])
    row = seats.people.get(player)
    return (number, "", "", "") if row is None else (number, row.id, row.name, row.section)


def _cells(one: Response) -> tuple[str, ...]:
    return (
        *(str(one.round), one.item, BETWEEN.join(one.facts), one.direction, one.stem),
        *(BETWEEN.join(one.options), BETWEEN.join(one.answer), BETWEEN.join(one.key)),
        *("" if one.right is None else "yes" if one.right else "no", marks_cell(one.mark)),
        *("" if one.certainty is None else str(one.certainty), str(one.t_ms)),
        *(str(one.attempt), one.phase, one.key_variant),
    )


def _time_cells(one: Response) -> tuple[str, ...]:
    return (f"{one.time_factor:g}", "yes" if one.took_time else "no")
