"""Gradebooks as files: what is written reads back, by Python's reader and by the grammar of RFC 4180."""

import csv
import io

from hypothesis import given, settings
from hypothesis import strategies as st

from quizroom.exchange.csv_cells import unharmed
from quizroom.exchange.gradebook_file import gradebook_file, marks_cell
from quizroom.service.roster_ports import RosterEntry, RosterRow
from quizroom.views.gradebook import ReviewMarks
from tests.exchange.rfc_4180 import by_rfc_4180

TEXT = st.text(st.characters(codec="utf-8", exclude_categories=("Cc", "Cs")), max_size=20)
CELL = st.one_of(
    TEXT, st.sampled_from(["=1+1", "+1", "-1", "@A1", 'x"y', "a,b", "00042", "'=x", "a;=1", "b;;@c", ""])
)
PLACES = range(4)


def entry(place: int, row: RosterRow) -> RosterEntry:
    return RosterEntry(entry=f"e{place}", row=row)


def review(title: str, marks: dict[str, float], most: int = 10) -> ReviewMarks:
    return ReviewMarks(
        room="r", title=title, began_at=None, most=most, marks=marks, claimed=len(marks), finished=True
    )


ENTRIES = st.lists(st.builds(RosterRow, id=CELL, name=CELL, section=CELL), max_size=len(PLACES)).map(
    lambda rows: [entry(place, row) for place, row in enumerate(rows)]
)
MARKS = st.dictionaries(st.sampled_from([f"e{place}" for place in PLACES]), st.floats(0, 60))
REVIEWS = st.lists(st.builds(review, CELL, MARKS, st.integers(1, 60)), max_size=4)


@settings(max_examples=50, deadline=None)
@given(ENTRIES, REVIEWS, st.booleans())
def test_what_is_written_reads_back(
    entries: list[RosterEntry],
    reviews: list[ReviewMarks],
    bom: bool,  # noqa: FBT001 - drawn by hypothesis
) -> None:
    written = gradebook_file(entries, reviews, bom=bom)
    assert written.startswith(b"\xef\xbb\xbf") is bom
    ours = list(csv.reader(io.StringIO(written.decode("utf-8-sig"), newline="")))
    assert ours == by_rfc_4180(written)
    head, *lines = ours
    assert len(set(head)) == len(head) == 3 + len(reviews)
    assert len(lines) == len(entries)
    for one, line in zip(entries, lines, strict=True):
        row = one.row
        assert [
            unharmed(cell) if cell != text else cell
            for cell, text in zip(line, (row.id, row.name, row.section), strict=False)
        ] == [row.id, row.name, row.section]
        for cell, column in zip(line[3:], reviews, strict=True):
            assert (cell == "") is (one.entry not in column.marks)
            assert cell == "" or abs(float(cell) - column.marks[one.entry]) <= 0.00005 + 1e-9
    # Parted by semicolons, as other spreadsheets do it, no cell is a formula either.
    parts = [part for line in ours for cell in line for part in cell.split(";")]
    assert not any(part.startswith(("=", "+", "-", "@", "\t", "\r")) for part in parts)


def test_no_mark_is_below_zero_and_none_is_written_in_powers_of_ten() -> None:
    cells = [marks_cell(marks) for marks in (None, 0.0, -0.0, -1.0, 1.0, 2 / 3, 10.0, 1e-9, 59.99999)]
    assert cells == ["", "0", "0", "0", "1", "0.6667", "10", "0", "60"]


def test_reviews_of_one_title_stay_apart() -> None:
    columns = [review("Arm", {}), review("Arm", {}), review("Arm", {}, most=5), review("Arm (2)", {})]
    head = gradebook_file([], columns).decode().splitlines()[0].split(",")
    assert head[3:] == ["Arm [10]", "Arm (2) [10]", "Arm [5]", "Arm (2) (2) [10]"]
