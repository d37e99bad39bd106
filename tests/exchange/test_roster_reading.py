"""Rosters as institutions and spreadsheets write them (RFC 4180), and every way in which they go wrong."""

import csv
import io

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from quizroom.exchange.csv_cells import harmless, unharmed
from quizroom.exchange.roster_faults import LONGEST_ID, LONGEST_NAME, LONGEST_SECTION
from quizroom.exchange.roster_file import write_roster
from quizroom.exchange.roster_reading import MOST_BYTES, MOST_ROWS, BadRoster, RosterSheet, read_roster
from quizroom.service.roster_ports import RosterRow, folded_id
from tests.exchange.rfc_4180 import by_rfc_4180

ADA = RosterRow(id="HH000101", name="Ada Alder", section="Lab 1")
BO = RosterRow(id="00042", name="Bo O'Dock", section="")
INJECTED = (
    "=1+1",
    "+1",
    "-1",
    "@SUM(A1)",
    "\t=1",
    "\r=1",
    "=cmd|' /C calc'!A0",
    '=HYPERLINK("http://hamatehill.example")',
)
"""Beginnings that OWASP's page "CSV Injection" names, and formulas of the kind that it shows."""


def read(text: str) -> RosterSheet:
    return read_roster(text.encode())


def refusal(raw: bytes | str) -> str:
    with pytest.raises(BadRoster) as refused:
        read_roster(raw.encode() if isinstance(raw, str) else raw)
    return str(refused.value)


@pytest.mark.parametrize("separator", [",", ";", "\t"])
@pytest.mark.parametrize("mark", ["", "\ufeff"])
@pytest.mark.parametrize("end", ["\r\n", "\n", "\r"])
def test_all_separators_marks_and_line_ends_are_read(separator: str, mark: str, end: str) -> None:
    lines = [["id", "name", "section"], ["HH000101", "Ada Alder", "Lab 1"], ["00042", "Bo O'Dock", ""]]
    text = mark + end.join(separator.join(line) for line in lines) + end
    sheet = read(text)
    assert (sheet.rows, sheet.refused) == ((ADA, BO), ())


@pytest.mark.parametrize(
    "text",
    [
        "section,name,id\nLab 1,Ada Alder,HH000101\n",
        "Student ID;First name;Last name;Lab section\nHH000101;Ada;Alder;Lab 1\n",
        "LAST_NAME,given-name,Year,institutional id,Group\nAlder,Ada,2,HH000101,Lab 1\n",
        'sep=;\nid;name;section\nHH000101;"Ada Alder";Lab 1\n',
        "\n\nid,name,section\n\nHH000101,Ada   Alder , Lab 1\n,,\n",
    ],
)
def test_columns_are_found_by_name_in_any_order(text: str) -> None:
    sheet = read(text)
    assert sheet.refused == ()
    assert {row.name for row in sheet.rows} <= {"Ada Alder"}
    assert [(row.id, row.section) for row in sheet.rows] == [("HH000101", "Lab 1")]


def test_what_is_not_needed_is_not_kept_and_that_is_said() -> None:
    assert read("id,name,e-mail,year\n1,Ada,a@hamatehill.example,2\n").ignored == ("e-mail", "year")


def test_quoted_cells_hold_separators_quotes_and_line_breaks() -> None:
    # RFC 4180, section 2, rules 6 and 7.
    sheet = read(
        'id,name,section\r\n1,"Müller-Elder, ""Mü""","Lab\r\n1"\r\n2,Bo,\r\n3,"x"y,\r\n'.replace(
            '"x"y', "Cem"
        )
    )
    assert sheet.rows[0] == RosterRow(id="1", name='Müller-Elder, "Mü"', section="Lab 1")
    assert [row.id for row in sheet.rows] == ["1", "2", "3"]


def test_names_of_any_script_and_length_come_through() -> None:
    names = ("O'Dock", "Müller-Elder", "Lena", "x" * 60, "דנה אלון", "榛木 花")
    text = "id,name\n" + "".join(f"{number:05},{name}\n" for number, name in enumerate(names))
    assert tuple(row.name for row in read(text).rows) == names


def test_leading_zeros_stay_and_odd_lengths_are_remarked_on() -> None:
    sheet = read("id,name\n00042,Ada\n123,Bo\n")
    assert [row.id for row in sheet.rows] == ["00042", "123"]
    assert "from 3 to 5 figures" in sheet.remarks[0]
    assert read("id,name\n00042,Ada\n00123,Bo\n").remarks == ()
    assert read("id,name\nHH1,Ada\nHH22,Bo\n").remarks == ()


@pytest.mark.parametrize(
    "line,says",
    [
        (",Ada,", "the id is missing"),
        ("1,,Lab 1", "the name is empty"),
        ("1,Ada", "2 cells where the header has 3"),
        ("1,Ada,Lab,1", "4 cells where the header has 3"),
        (f"{'9' * (LONGEST_ID + 1)},Ada,", f"more than {LONGEST_ID}"),
        ("\ufdfa" * 10 + ",Ada,", f"more than {LONGEST_ID}"),  # one letter that folds into eighteen
        (f"1,{'a' * (LONGEST_NAME + 1)},", f"more than {LONGEST_NAME}"),
        (f"1,Ada,{'a' * (LONGEST_SECTION + 1)}", f"more than {LONGEST_SECTION}"),
        ("1.23E+08,Ada,", "a spreadsheet has rounded"),
        ("1,Ada\u202e,", "cannot be seen"),
        ("1\u200b2,Ada,", "cannot be seen"),
        ("1,A\x07da,", "cannot be seen"),
        ("hh 7,Ada,", 'the id "hh 7" stands in line 2 already'),
    ],
)
def test_a_row_that_cannot_be_taken_says_its_line_and_what_to_do(line: str, says: str) -> None:
    sheet = read(f'id,name,section\nHH7,"Lena\nLarch",\n{line}\nHH9,Gwen Gorse,Lab 2\n')
    assert [row.id for row in sheet.rows] == ["HH7", "HH9"]
    assert [(one.line, says in one.message) for one in sheet.refused] == [(4, True)], sheet.refused


@pytest.mark.parametrize(
    "raw,says",
    [
        (b"", "empty"),
        (b" \n", "empty"),
        ("id,name\n1,Müller\n".encode("latin-1"), "not in UTF-8: line 2"),
        ("id,name\n1,Müller\n".encode("utf-16"), "UTF-16"),
        ("id,name\n1,Ada\n".encode("utf-16-le"), "UTF-16"),
        (b"PK\x03\x04rest", "workbook"),
        (b"\xd0\xcf\x11\xe0rest", "workbook"),
        ("name,section\nAda,1\n", 'none is called "id"'),
        ("id,section\n1,1\n", 'none is called "name"'),
        ("1,Ada\n2,Bo\n", 'It holds "1", "Ada"'),
        ("id,ID,name\n1,1,Ada\n", "both hold the id"),
        ("id,name\n", "nobody below the header"),
        ('id,name\n1,"Ada\n2,Bo\n', "begins in line 2"),
        ('id,name\n1,Bo\n2,"Ada" A\n', "begins in line 3"),
        ("id,name\n" + "".join(f"{n},A\n" for n in range(MOST_ROWS + 1)), f"More than {MOST_ROWS}"),
        ("id,name\n" + "x" * MOST_BYTES, "kB"),
    ],
)
def test_a_file_that_cannot_be_read_says_why(raw: bytes | str, says: str) -> None:
    assert says in refusal(raw)


@pytest.mark.parametrize("cell", INJECTED)
def test_no_cell_is_a_formula_and_ours_come_back_as_they_were(cell: str) -> None:
    assert harmless(cell) == f"'{cell}"
    assert unharmed(harmless(cell)) == cell


def test_a_name_that_begins_like_a_formula_survives_going_out_and_coming_back() -> None:
    row = RosterRow(id="=7", name="=1+1", section="-2")
    written = write_roster([row])
    assert b"'=1+1" in written
    assert read_roster(written).rows == (row,)


CELL = st.text(
    st.characters(codec="utf-8", exclude_categories=("Cc", "Cs", "Cf")), min_size=1, max_size=30
).map(lambda text: unharmed(" ".join(text.split())))
ROWS = st.lists(
    st.builds(
        RosterRow,
        id=CELL.filter(lambda text: 0 < len(folded_id(text)) <= LONGEST_ID),
        name=CELL,
        section=CELL,
    ),
    min_size=1,
    max_size=8,
    unique_by=lambda row: folded_id(row.id),
).map(lambda rows: [row for row in rows if row.id and row.name])


@settings(max_examples=50, deadline=None)
@given(ROWS.filter(bool), st.booleans())
def test_what_is_written_reads_back_the_same_here_and_by_the_rules_of_rfc_4180(
    rows: list[RosterRow],
    mark: bool,  # noqa: FBT001 - drawn by hypothesis
) -> None:
    written = write_roster(rows, bom=mark)
    sheet = read_roster(written)
    known = [row for row in rows if row in sheet.rows]
    assert len(known) + len(sheet.refused) == len(rows)
    assert all("rounded" in one.message or "cannot be seen" in one.message for one in sheet.refused)
    plain = [[row.id, row.name, row.section] for row in rows]
    for table in (
        list(csv.reader(io.StringIO(written.decode("utf-8-sig"), newline=""))),
        by_rfc_4180(written),
    ):
        assert [[unharmed(cell) for cell in line] for line in table[1:]] == plain
        assert not any(cell.startswith(("=", "+", "-", "@", "\t", "\r")) for line in table for cell in line)
