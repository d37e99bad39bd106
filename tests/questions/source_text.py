"""The content read a second time, by the standard library alone, for the oracle.

Nothing here or in the other files of the oracle imports quizroom: they judge it.
"""

import tomllib
from dataclasses import dataclass
from pathlib import Path
from typing import Any

CONTENT = Path(__file__).resolve().parents[2] / "content"
Table = dict[str, Any]


@dataclass(frozen=True)
class Reading:
    """One row of a muscle's file."""

    muscle: str
    part: str
    value: str
    status: str
    role: str
    fact: str


@dataclass(frozen=True)
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
    lookalikes: Table
    muscles: dict[str, Table]
    courses: dict[str, Table]
    rows: dict[str, list[Reading]]


def read_text() -> Text:
    """Read every file of the content."""
    muscles = {path.stem: parsed(path) for path in sorted(CONTENT.glob("muscles/**/*.toml"))}
    return Text(
        landmarks=dict(_landmarks()),
        regions=vocabulary("regions"),
        compartments=vocabulary("compartments"),
        bones=vocabulary("bones"),
        joints=vocabulary("joints"),
        movements=vocabulary("movements"),
        nerves=vocabulary("nerves"),
        arteries=vocabulary("arteries"),
        lookalikes=vocabulary("lookalikes"),
        muscles=muscles,
        courses={path.stem: parsed(path) for path in sorted(CONTENT.glob("courses/*.toml"))},
        rows={table: list(_rows(muscles, table)) for table in _KINDS},
    )


def vocabulary(name: str) -> Table:
    """A vocabulary of one file, or of a folder of files."""
    paths = [CONTENT / f"{name}.toml", *sorted((CONTENT / name).glob("*.toml"))]
    return {key: row for path in paths if path.exists() for key, row in parsed(path).items()}


def parsed(path: Path) -> Table:
    """One file."""
    return tomllib.loads(path.read_text("utf-8"))


def _landmarks() -> list[tuple[str, Table]]:
    found = []
    for path in sorted(CONTENT.glob("landmarks/*.toml")):
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
        )
        for muscle, file in muscles.items()
        for row in file.get(table, [])
    ]
