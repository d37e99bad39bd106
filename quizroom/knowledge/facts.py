"""Facts: the single statements that a muscle's record is made of, each with an id for ever.

A fact id reads `<muscle>/<kind>/<part or ->/<value>`. The value is the id of a site, a nerve, an
artery or a compartment, `<joint>.<movement>` for an action, and the words themselves for a name.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from quizroom.knowledge.model import Action, Attachment, Blood, Muscle, Status, Supply

FactKind = Literal["name", "meaning", "compartment", "origin", "insertion", "action", "nerve", "artery"]
Row = Attachment | Action | Supply | Blood
WHOLE = "-"
"""Stands in a fact id for the whole muscle, or for a value that is not needed."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Fact:
    """One statement about one muscle. `row` is its line of the content, if it has one."""

    id: str
    muscle: str
    kind: FactKind
    part: str
    value: str
    status: Status
    sources: tuple[str, ...]
    key: str
    """Where it stands in the muscle's file, such as `origins[0]`."""
    row: Row | None = None


def fact_id(muscle: str, kind: FactKind, part: str, value: str) -> str:
    """The id of a fact; an empty part or value becomes a dash."""
    return f"{muscle}/{kind}/{part or WHOLE}/{value or WHOLE}"


def slug(text: str) -> str:
    """The words of a term as an id: lower case, joined by underscores."""
    return "_".join(re.findall(r"[^\W_]+", text.lower()))


def row_value(row: Row) -> str:
    """What a row states: the id of its site, nerve or artery, or `joint.movement`."""
    match row:
        case Attachment():
            return row.site
        case Action():
            return f"{row.joint}.{row.movement}"
        case Supply():
            return row.nerve
        case Blood():
            return row.artery


def row_fact(muscle: str, kind: FactKind, row: Row, key: str = "") -> Fact:
    """The fact that a row of a muscle's file states."""
    value = row_value(row)
    return Fact(
        id=fact_id(muscle, kind, row.part, value),
        muscle=muscle,
        kind=kind,
        part=row.part,
        value=value,
        status=row.status,
        sources=row.sources,
        key=key,
        row=row,
    )


def rows_of(muscle: Muscle) -> Iterator[tuple[FactKind, str, Row]]:
    """Every row of the muscle that states a fact, with its kind and its key in the file."""
    tables: tuple[tuple[FactKind, str, tuple[Row, ...]], ...] = (
        ("origin", "origins", muscle.origins),
        ("insertion", "insertions", muscle.insertions),
        ("action", "actions", muscle.actions),
        ("nerve", "nerves", muscle.nerves),
        ("artery", "arteries", muscle.arteries),
    )
    for kind, table, rows in tables:
        for position, row in enumerate(rows):
            yield kind, f"{table}[{position}]", row


def facts_of(muscle: Muscle) -> Iterator[Fact]:
    """All facts of the muscle, of every status, in the order of the file."""
    yield _plain_fact(muscle, "name", slug(muscle.name), "name")
    for position, name in enumerate(muscle.names):
        yield _plain_fact(muscle, "name", slug(name.term), f"names[{position}]")
    yield _plain_fact(muscle, "meaning", "", "meaning")
    yield _plain_fact(muscle, "compartment", muscle.compartment, "compartment")
    for kind, key, row in rows_of(muscle):
        yield row_fact(muscle.id, kind, row, key)


def _plain_fact(muscle: Muscle, kind: FactKind, value: str, key: str) -> Fact:
    return Fact(
        id=fact_id(muscle.id, kind, "", value),
        muscle=muscle.id,
        kind=kind,
        part="",
        value=value,
        status="core",
        sources=muscle.sources,
        key=key,
    )
