"""Outside tables of facts, held against the content row by row.

A row agrees, disagrees, or cannot be compared (its words are too coarse or name what we do not
model). A disagreement must stand in allowed.toml with its reason, and only as long as it is one.
"""

import csv
import tomllib
from collections import Counter
from collections.abc import Callable, Iterable
from functools import cache
from pathlib import Path
from typing import Any, Literal, NamedTuple

from quizroom.knowledge.catalogue import Catalogue
from quizroom.knowledge.facts import slug
from quizroom.knowledge.load import content_folder, load_content

FOLDER = Path(__file__).parent
DOUBTED = "!!"
"""In a note: whoever made the table holds the row to be wrong or doubtful."""

Verdict = Literal["agrees", "disagrees", "not comparable"]


class Row(NamedTuple):
    """One fact of an outside table, in the words of its source."""

    source: str
    source_ref: str
    muscle: str
    part: str
    fact_type: str
    value: str
    note: str


class Case(NamedTuple):
    """What makes a row findable in allowed.toml."""

    table: str
    muscle: str
    fact_type: str
    value: str


@cache
def content() -> Catalogue:
    """The content that comes with the program."""
    catalogue = load_content(content_folder()).catalogue
    assert catalogue is not None
    return catalogue


@cache
def rows_of(table: str) -> tuple[Row, ...]:
    """All rows of a table that are about muscles of ours, doubted ones too."""
    with (FOLDER / f"facts_{table}.csv").open(encoding="utf-8", newline="") as file:
        rows = [Row(**fields) for fields in csv.DictReader(file)]
    return tuple(row for row in rows if slug(row.muscle) in content().muscles)


def comparable_rows(table: str, *fact_types: str) -> list[Row]:
    """The undoubted rows of some types."""
    return [row for row in rows_of(table) if row.fact_type in fact_types and DOUBTED not in row.note]


def allowed(table: str) -> dict[Case, str]:
    """The listed disagreements of a table with their reasons."""
    entries: list[dict[str, Any]] = tomllib.loads((FOLDER / "allowed.toml").read_text("utf-8"))["allowed"]
    reasons = {
        Case(one["table"], one["muscle"], one["fact_type"], one["value"]): str(one["reason"])
        for one in entries
    }
    assert len(reasons) == len(entries)
    return {case: reason for case, reason in reasons.items() if case.table == table}


def hold(table: str, rows: Iterable[Row], judge: Callable[[Row], Verdict], *, agree_at_least: int) -> None:
    """Judge all rows: no unexplained disagreement, no needless allowance, and enough that agree."""
    rows = list(rows)
    verdicts = [(row, judge(row)) for row in rows]
    cases = {
        Case(table, slug(row.muscle), row.fact_type, row.value) for row, one in verdicts if one == "disagrees"
    }
    fact_types = {row.fact_type for row in rows}
    listed = {case for case in allowed(table) if case.fact_type in fact_types}
    assert cases - listed == set(), "unexplained disagreement"
    assert listed - cases == set(), "allowed, but no disagreement any more"
    counts = Counter(one for _, one in verdicts)
    assert counts["agrees"] >= agree_at_least, counts
