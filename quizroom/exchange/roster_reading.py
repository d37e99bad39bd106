"""Reading a class roster: what can be taken, and for each line that cannot, what is to be done.

The file is CSV (RFC 4180) in UTF-8, with or without a byte order mark; cells are parted by commas, semicolons
or tabs, and lines end as any system ends them. Columns are found by the words of the header.
"""

import csv
import io
import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from quizroom.exchange.csv_cells import unharmed
from quizroom.exchange.roster_columns import Columns, find_columns
from quizroom.exchange.roster_faults import faults_of, remarks_on
from quizroom.service.roster_ports import RosterRow, folded_id

MOST_ROWS = 2000
MOST_BYTES = 300_000
SEPARATORS = ",;\t"
SEPARATOR_LINE = re.compile(r'"?sep=(.)"?[\r\n]+')
"""Some spreadsheets write it above the header."""
WORKBOOKS = (b"PK\x03\x04", b"\xd0\xcf\x11\xe0")
"""How workbooks begin (zip and compound files, from memory)."""
WIDE_MARKS = (b"\xff\xfe", b"\xfe\xff")
"""Byte order marks of UTF-16 (RFC 2781, 3.2)."""
SAVE_AS = "Save it as CSV in UTF-8 (in a spreadsheet: save as, CSV UTF-8) and choose that file."


class BadRoster(Exception):
    """The file as a whole cannot be read; the text says why and what to do."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RowRefused:
    """A row that cannot be taken, the line of the file on which it begins (from 1), and what to do."""

    line: int
    message: str


@dataclass(frozen=True, slots=True, kw_only=True)
class RosterSheet:
    """What a file yields; `ignored` are columns that are not kept, `remarks` what looks odd as a whole."""

    rows: tuple[RosterRow, ...]
    refused: tuple[RowRefused, ...]
    ignored: tuple[str, ...]
    remarks: tuple[str, ...]


def read_roster(raw: bytes, *, most_bytes: int = MOST_BYTES) -> RosterSheet:
    """The rows of a file that can be taken, and those that cannot, each with its line.

    Raises:
        BadRoster: nothing of it can be read.
    """
    text = _decoded(raw, most_bytes)
    above = SEPARATOR_LINE.match(text)
    lines = _lines(text, above[1] if above else _separator(text))
    if above:
        next(lines)
    _, header = next(lines, (1, []))
    columns = find_columns(header)
    if isinstance(columns, str):
        raise BadRoster(columns)
    return _sheet(columns, lines)


def too_large(most_bytes: int) -> str:
    """What is said of a file that has more bytes than that."""
    return f"The file has more than {most_bytes // 1000} kB. Leave only id, name and section in it."


def _sheet(columns: Columns, lines: Iterator[tuple[int, list[str]]]) -> RosterSheet:
    rows: list[RosterRow] = []
    refused: list[RowRefused] = []
    stands_in: dict[str, int] = {}
    for number, cells in lines:
        if not any(cells):
            continue
        row, fault = _row(columns, cells)
        key = folded_id(row.id)
        if not fault and key in stands_in:
            fault = f'the id "{row.id}" stands in line {stands_in[key]} already. Keep one of the two.'
        if fault:
            refused.append(RowRefused(line=number, message=fault))
        else:
            stands_in[key] = number
            rows.append(row)
        if len(rows) > MOST_ROWS:
            raise BadRoster(f"More than {MOST_ROWS} people are too many for one roster. Make one a course.")
    if not rows and not refused:
        raise BadRoster("There is nobody below the header. Add one line for each person.")
    return RosterSheet(
        rows=tuple(rows), refused=tuple(refused), ignored=columns.ignored, remarks=remarks_on(rows)
    )


def _row(columns: Columns, cells: Sequence[str]) -> tuple[RosterRow, str]:
    """The row, and what is wrong with it, empty if nothing is."""
    if len(cells) != columns.width:
        few = f"it has {len(cells)} cells where the header has {columns.width}."
        return RosterRow(id="", name=""), f"{few} Put a text that holds a separator in double quotes."
    row = RosterRow(
        id=cells[columns.id],
        name=" ".join(filter(None, (cells[column] for column in columns.name))),
        section="" if columns.section is None else cells[columns.section],
    )
    return row, faults_of(row)


def _decoded(raw: bytes, most_bytes: int) -> str:
    if not raw.strip():
        raise BadRoster("The file is empty.")
    if len(raw) > most_bytes:
        raise BadRoster(too_large(most_bytes))
    if raw.startswith(WORKBOOKS):
        raise BadRoster(f"This is a workbook, not a CSV file. {SAVE_AS}")
    if raw.startswith(WIDE_MARKS) or b"\0" in raw:
        raise BadRoster(f"This file is in UTF-16 or is no text. {SAVE_AS}")
    try:
        return raw.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = raw.count(b"\n", 0, error.start) + 1
        raise BadRoster(
            f"The file is not in UTF-8: line {line} holds a letter in another encoding. {SAVE_AS}"
        ) from error


def _separator(text: str) -> str:
    """The separator by which the first line falls into most cells; the comma if it falls into none."""
    first = next((line for line in text.splitlines() if line.strip()), "")
    return max(SEPARATORS, key=lambda one: len(next(csv.reader([first], delimiter=one))))


def _lines(text: str, separator: str) -> Iterator[tuple[int, list[str]]]:
    """Each row that is not empty, and the line on which it begins."""
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=separator, strict=True)
    begins = 1
    try:
        for cells in reader:
            if cells:
                yield begins, [unharmed(" ".join(cell.split())) for cell in cells]
            begins = reader.line_num + 1
    except csv.Error as error:
        raise BadRoster(
            f"The row that begins in line {begins} cannot be read ({error}). A double quote opens and closes "
            "a cell; inside such a cell it is written twice."
        ) from error
