"""The knowledge base as a sheet: complete, plain, and safe to open."""

import csv
import io

import pytest
from hypothesis import given
from hypothesis import strategies as st

from quizroom.exchange.csv_cells import BEGINS_A_FORMULA
from quizroom.exchange.sheet import COLUMNS, FACT_TYPES, SheetRow, sheet_rows, write_sheet
from quizroom.knowledge.catalogue import Catalogue
from quizroom.knowledge.facts import rows_of
from tests.shipped import content


@pytest.fixture(scope="module")
def catalogue() -> Catalogue:
    return content()


def test_every_recorded_fact_of_every_muscle_is_one_row(catalogue: Catalogue) -> None:
    rows = list(sheet_rows(catalogue))
    for muscle in catalogue.muscles.values():
        recorded = {(kind, row.part, _value_id(kind, row), row.status) for kind, _, row in rows_of(muscle)}
        printed = {
            (row.fact_type, row.part, row.value_id, row.status)
            for row in rows
            if row.muscle == muscle.id
            and row.fact_type in ("origin", "insertion", "action", "nerve", "artery")
        }
        assert printed == recorded


def test_every_fact_type_occurs(catalogue: Catalogue) -> None:
    assert {row.fact_type for row in sheet_rows(catalogue)} == set(FACT_TYPES)


def test_biceps_has_no_origin_on_the_humerus(catalogue: Catalogue) -> None:
    # common practice, no source: both heads of biceps pass the humerus by
    bones = {
        row.value_id
        for row in sheet_rows(catalogue)
        if row.muscle == "biceps_brachii" and row.fact_type in ("origin_bone", "insertion_bone")
    }
    assert bones == {"scapula", "radius"}


def test_the_sheet_reads_back_as_written(catalogue: Catalogue) -> None:
    rows = list(sheet_rows(catalogue))
    read = list(csv.DictReader(io.StringIO(write_sheet(rows), newline="")))
    assert len(read) == len(rows)
    assert tuple(read[0]) == COLUMNS
    assert [line["value"].removeprefix("'") for line in read] == [row.value for row in rows]


@given(st.sampled_from(BEGINS_A_FORMULA), st.text())
def test_no_cell_is_a_formula(start: str, rest: str) -> None:
    row = SheetRow(
        muscle="m",
        name=start + rest,
        part="",
        fact_type="latin",
        value="",
        value_id="",
        status="",
        sources=(),
    )
    (line,) = list(csv.reader(io.StringIO(write_sheet([row]), newline="")))[1:]
    assert not line[1].startswith(BEGINS_A_FORMULA)


def _value_id(kind: str, row: object) -> str:
    match kind:
        case "action":
            return f"{row.joint}.{row.movement}"  # type: ignore[attr-defined] # the kind says which row it is
        case "nerve":
            return str(row.nerve)  # type: ignore[attr-defined] # likewise
        case "artery":
            return str(row.artery)  # type: ignore[attr-defined] # likewise
        case _:
            return str(row.site)  # type: ignore[attr-defined] # likewise
