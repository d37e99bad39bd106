"""Outside tables of facts, one row a fact in the words of its source (see CREDITS.md)."""

import csv
import tomllib
from functools import cache
from pathlib import Path
from typing import Any, NamedTuple

from quizroom.knowledge.facts import slug

FOLDER = Path(__file__).parent
TABLES = {
    "openstax_ap2e": "OpenStax",
    "uberon": "Uberon",
    "myosim_moment_arms": "MyoSim",
    "opensim_neck": "head-neck model",
}
"""The tables and how their sources are called for short."""
DOUBTED = "!!"
"""In a note: whoever made the table holds the row to be wrong or doubtful."""


class Row(NamedTuple):
    """One fact of an outside table, in the words of its source."""

    source: str
    source_ref: str
    muscle: str
    part: str
    fact_type: str
    value: str
    note: str


class Target(NamedTuple):
    """A muscle of ours, or one part of it, that a row is about."""

    muscle: str
    part: str


@cache
def every_row(table: str) -> tuple[Row, ...]:
    """All rows of a table."""
    with (FOLDER / f"facts_{table}.csv").open(encoding="utf-8", newline="") as file:
        return tuple(Row(**fields) for fields in csv.DictReader(file))


@cache
def words(name: str) -> dict[str, Any]:
    """A file that says what the words of the tables mean."""
    return tomllib.loads((FOLDER / f"{name}.toml").read_text("utf-8"))


def targets(row: Row) -> tuple[Target, ...]:
    """The muscles of ours that a row is about; none if the content does not have them."""
    names = words("names")
    keys = [key for key in (f"{row.muscle} / {row.part}", row.muscle) if key in names]
    return tuple(Target(*one.partition("/")[::2]) for one in (names[keys[0]] if keys else [slug(row.muscle)]))


@cache
def rows_of(table: str) -> tuple[Row, ...]:
    """The rows of a table that are about muscles of ours, doubted ones too."""
    return tuple(row for row in every_row(table) if targets(row))
