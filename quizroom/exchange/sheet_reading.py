"""Reading a sheet of additions or corrections, line by line."""

import csv
import io
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from quizroom.exchange.csv_cells import unharmed
from quizroom.exchange.sheet import COLUMNS, COMPUTED, FACT_TYPES, FactType, SheetRow
from quizroom.knowledge.catalogue import Catalogue
from quizroom.knowledge.suggest import suggest

STATUSES = ("core", "variant", "minority", "remove")
"""`remove` takes a listed fact out; the others are those of the content."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """A row and where it stands in the file; the header is line 1."""

    number: int
    row: SheetRow


@dataclass(frozen=True, slots=True, kw_only=True)
class LineRefused:
    """A line that cannot be taken, and what to do about it."""

    number: int
    message: str


def read_sheet(text: str, catalogue: Catalogue) -> tuple[tuple[Line, ...], tuple[LineRefused, ...]]:
    """The lines of a CSV file that can be understood, and those that cannot."""
    reader = csv.DictReader(io.StringIO(text.removeprefix("\ufeff"), newline=""))
    missing = [column for column in COLUMNS if column not in (reader.fieldnames or ())]
    if missing:
        message = f"the header lacks {', '.join(missing)}; it must read {','.join(COLUMNS)}"
        return (), (LineRefused(number=1, message=message),)
    lines: list[Line] = []
    refused: list[LineRefused] = []
    for cells in reader:
        found = _read_line(reader.line_num, cells, catalogue)
        if isinstance(found, Line):
            lines.append(found)
        elif found is not None:
            refused.append(found)
    return tuple(lines), tuple(refused)


def _read_line(
    number: int, raw: Mapping[str | None, str | None], catalogue: Catalogue
) -> Line | LineRefused | None:
    cells = {column: _cell(raw.get(column)) for column in COLUMNS}
    if not any(cells.values()):
        return None
    for problem in _problems(cells, overlong=None in raw, catalogue=catalogue):
        return LineRefused(number=number, message=problem)
    fact_type = _fact_type(cells["fact_type"])
    if fact_type is None:
        return LineRefused(number=number, message=f'"{cells["fact_type"]}" is no fact type')
    row = SheetRow(
        muscle=cells["muscle"],
        name=cells["name"],
        part=cells["part"],
        fact_type=fact_type,
        value=cells["value"],
        value_id=cells["value_id"],
        status=cells["status"] or "core",
        sources=tuple(source.strip() for source in cells["sources"].split(";") if source.strip()),
    )
    return Line(number=number, row=row)


def _problems(cells: Mapping[str, str], *, overlong: bool, catalogue: Catalogue) -> Iterator[str]:
    if overlong:
        yield "the line has more cells than the header; put a text with commas in double quotes"
    muscle = cells["muscle"]
    if muscle not in catalogue.muscles:
        tip = suggest(muscle, catalogue.muscles)
        yield f'there is no muscle "{muscle}": {tip} (a new muscle gets a file of its own in content/muscles)'
        return
    fact_type = _fact_type(cells["fact_type"])
    if fact_type is None:
        yield f'"{cells["fact_type"]}" is no fact type: {suggest(cells["fact_type"], FACT_TYPES)}'
    if cells["status"] and cells["status"] not in STATUSES:
        yield f'"{cells["status"]}" is no status; use {", ".join(STATUSES)}'
    parts = [part.id for part in catalogue.muscles[muscle].parts]
    if cells["part"] and cells["part"] not in parts:
        yield f'{muscle} has no part "{cells["part"]}": {suggest(cells["part"], parts)}'
    if not cells["value"] and not cells["value_id"] and fact_type not in COMPUTED:
        yield "value and value_id are both empty"


def _fact_type(text: str) -> FactType | None:
    return next((fact_type for fact_type in FACT_TYPES if fact_type == text), None)


def _cell(text: str | None) -> str:
    return unharmed(" ".join((text or "").split()))
