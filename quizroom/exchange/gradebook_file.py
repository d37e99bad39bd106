"""The gradebook as CSV: one line a person of the roster, one column a review.

A blank is no mark: nobody claimed that id, or nothing was answered. 0 is a mark. None is ever below 0.
"""

from collections.abc import Iterator, Sequence

from quizroom.exchange.csv_files import csv_file
from quizroom.service.roster_ports import RosterEntry
from quizroom.views.gradebook import ReviewMarks

PEOPLE = ("id", "name", "section")


def gradebook_file(
    entries: Sequence[RosterEntry], reviews: Sequence[ReviewMarks], *, bom: bool = False
) -> bytes:
    """Everybody on the roster with the marks of these reviews; `bom` puts a byte order mark in front."""
    header = (*PEOPLE, *_titles(reviews))
    return csv_file(header, (_line(entry, reviews) for entry in entries), bom=bom)


def marks_cell(marks: float | None) -> str:
    """A mark with a point and at most four decimals, never below 0; blank where there is none."""
    return "" if marks is None else f"{max(0.0, marks):.4f}".rstrip("0").rstrip(".")


def _line(entry: RosterEntry, reviews: Sequence[ReviewMarks]) -> tuple[str, ...]:
    row = entry.row
    return (row.id, row.name, row.section, *(marks_cell(one.marks.get(entry.entry)) for one in reviews))


def _titles(reviews: Sequence[ReviewMarks]) -> Iterator[str]:
    """`Title [most marks]`; those that read alike are numbered, so that no column hides another."""
    taken: set[str] = set(PEOPLE)
    for one in reviews:
        number, title = 1, f"{one.title} [{one.most}]"
        while title in taken:
            number += 1
            title = f"{one.title} ({number}) [{one.most}]"
        taken.add(title)
        yield title
