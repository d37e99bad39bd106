"""The content read a second time, by the standard library alone, for the oracle.

Nothing here or in the other files of the oracle imports quizroom: they judge it.
"""

import tomllib
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

CONTENT = Path(__file__).resolve().parents[2] / "content"
Table = dict[str, Any]
VOCABULARIES = (
    *("regions", "compartments", "bones", "joints", "movements", "nerves", "arteries", "levels"),
    "lookalikes",
)


@dataclass(frozen=True)
class Reading:
    """One row of a muscle's file."""

    muscle: str
    part: str
    value: str
    status: str
    role: str
    fact: str
    roots: frozenset[str]
    main: frozenset[str]


@dataclass(frozen=True, eq=False)
class Text:
    """All tables by id; `rows` are the readings by table name (origins, nerves, ...)."""

    landmarks: dict[str, Table]
    regions: Table
    compartments: Table
    bones: Table
    joints: Table
    movements: Table
    nerves: Table
    arteries: Table
    levels: Table
    lookalikes: Table
    muscles: dict[str, Table]
    courses: dict[str, Table]
    rows: dict[str, list[Reading]]
    by_muscle: dict[tuple[str, str], list[Reading]]
    """The rows of a table by (table, muscle)."""


@cache
def read_text(folder: Path = CONTENT) -> Text:
    """Read every file of the content."""
    words = {name: vocabulary(folder, name) for name in VOCABULARIES}
    muscles = {path.stem: parsed(path) for path in sorted(folder.glob("muscles/**/*.toml"))}
    rows = {table: list(_rows(muscles, table)) for table in _KINDS}
    by_muscle: dict[tuple[str, str], list[Reading]] = {}
    for table, readings in rows.items():
        for row in readings:
            by_muscle.setdefault((table, row.muscle), []).append(row)
    return Text(
        landmarks=dict(_landmarks(folder)),
        muscles=muscles,
        courses={path.stem: parsed(path) for path in sorted(folder.glob("courses/*.toml"))},
        rows=rows,
        by_muscle=by_muscle,
        **words,
    )


def vocabulary(folder: Path, name: str) -> Table:
    """A vocabulary of one file, or of a folder of files."""
    paths = [folder / f"{name}.toml", *sorted((folder / name).glob("*.toml"))]
    return {key: row for path in paths if path.exists() for key, row in parsed(path).items()}


def parsed(path: Path) -> Table:
    """One file."""
    return tomllib.loads(path.read_text("utf-8"))


def _landmarks(folder: Path) -> list[tuple[str, Table]]:
    found = []
    for path in sorted(folder.glob("landmarks/*.toml")):
        for bone, places in parsed(path).items():
            for key, place in places.items():
                found.append((f"{bone}.{key}", {"bones": [bone], **place}))
    return found


_KINDS = {
    "origins": "origin",
    "insertions": "insertion",
    "actions": "action",
    "nerves": "nerve",
    "arteries": "artery",
}


def _value(kind: str, row: Table) -> str:
    if kind == "action":
        return f"{row['joint']}.{row['movement']}"
    return str(row["site"] if kind in ("origin", "insertion") else row[kind])


def _rows(muscles: dict[str, Table], table: str) -> list[Reading]:
    kind = _KINDS[table]
    return [
        Reading(
            muscle=muscle,
            part=row.get("part", ""),
            value=_value(kind, row),
            status=row.get("status", "core"),
            role=row.get("role", ""),
            fact=f"{muscle}/{kind}/{row.get('part') or '-'}/{_value(kind, row)}",
            roots=frozenset((*row.get("roots", ()), *row.get("main", ()))),
            main=frozenset(row.get("main", ())),
        )
        for muscle, file in muscles.items()
        for row in file.get(table, [])
    ]
