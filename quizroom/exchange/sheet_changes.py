"""Applying the lines of a sheet to the TOML of muscles, keeping everything else as it is written."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

import tomlkit
from tomlkit import TOMLDocument

from quizroom.exchange.sheet import COMPUTED, SheetRow
from quizroom.exchange.sheet_values import NoSuchValue, value_id_of
from quizroom.knowledge.catalogue import Catalogue

TABLES: Mapping[str, tuple[str, tuple[str, ...]]] = {
    "origin": ("origins", ("site",)),
    "insertion": ("insertions", ("site",)),
    "action": ("actions", ("joint", "movement")),
    "nerve": ("nerves", ("nerve",)),
    "artery": ("arteries", ("artery",)),
}
"""The table of a listed fact, and the fields that say which fact it is."""
PLAIN = {"latin": "latin", "name_meaning": "meaning", "region": "region", "compartment": "compartment"}


@dataclass(frozen=True, slots=True, kw_only=True)
class Applied:
    """What a line did: nothing, or a change at `key` of the muscle's file."""

    changed: bool
    key: str


class CannotApply(Exception):
    """The line contradicts what is recorded or computed; the text says how to go on."""


def apply_row(document: TOMLDocument, row: SheetRow, catalogue: Catalogue) -> Applied:
    """Change the document so that it states the row.

    Raises:
        CannotApply: with what to do instead.
    """
    try:
        value_id = value_id_of(row, catalogue)
    except NoSuchValue as unknown:
        raise CannotApply(str(unknown)) from unknown
    if row.fact_type in COMPUTED:
        raise CannotApply(
            f"{row.fact_type} is computed: change the origins and insertions that it follows from"
        )
    if row.fact_type in PLAIN:
        return _set(document, PLAIN[row.fact_type], value_id or row.value, row)
    if row.fact_type in ("fma_id", "uberon_id"):
        return _set_id(document, row)
    if row.fact_type == "synonym":
        return _apply_name(document, row)
    if row.fact_type == "root":
        return _apply_root(document, row, value_id)
    return _apply_listed(document, row, value_id)


def _set(document: TOMLDocument, field: str, value: str, row: SheetRow) -> Applied:
    if row.status == "remove":
        raise CannotApply(f"{row.fact_type} cannot be removed, only corrected")
    if document.get(field) == value:
        return Applied(changed=False, key=field)
    document[field] = value
    return Applied(changed=True, key=field)


def _set_id(document: TOMLDocument, row: SheetRow) -> Applied:
    field = row.fact_type.removesuffix("_id")
    if "ids" not in document:
        document["ids"] = tomlkit.table()
    ids: Any = document["ids"]
    if row.status == "remove":
        gone = ids.pop(field, None)
        return Applied(changed=gone is not None, key=f"ids.{field}")
    value = row.value or row.value_id
    if ids.get(field) == value:
        return Applied(changed=False, key=f"ids.{field}")
    ids[field] = value
    return Applied(changed=True, key=f"ids.{field}")


def _apply_name(document: TOMLDocument, row: SheetRow) -> Applied:
    names = _array(document, "names")
    found = next((at for at, name in enumerate(names) if name["term"] == row.value), None)
    if row.status == "remove":
        return _remove(names, found, "names")
    if found is not None:
        return Applied(changed=False, key=f"names[{found}]")
    names.append(_table({"term": row.value, "kind": row.value_id or "synonym"}))
    return Applied(changed=True, key=f"names[{len(names) - 1}]")


def _apply_root(document: TOMLDocument, row: SheetRow, nerve: str) -> Applied:
    supplies = _array(document, "nerves")
    for at, supply in enumerate(supplies):
        if supply["nerve"] == nerve and supply.get("part", "") == row.part:
            roots = [root for root in supply["roots"] if root != row.value]
            if row.status != "remove":
                roots = sorted({*roots, row.value}, key=_segment_order)
            changed = roots != list(supply["roots"])
            if changed:
                supply["roots"] = roots
            return Applied(changed=changed, key=f"nerves[{at}].roots")
    raise CannotApply(f"{row.muscle} has no row for {nerve} yet: put a line for the nerve above this one")


def _apply_listed(document: TOMLDocument, row: SheetRow, value_id: str) -> Applied:
    table, fields = TABLES[row.fact_type]
    wanted = dict(zip(fields, _values(row, value_id), strict=True))
    rows = _array(document, table)
    found = next((at for at, entry in enumerate(rows) if _states(entry, wanted, row.part)), None)
    if row.status == "remove":
        return _remove(rows, found, table)
    if found is None:
        rows.append(_table(_new_entry(row, wanted)))
        return Applied(changed=True, key=f"{table}[{len(rows) - 1}]")
    return Applied(changed=_corrected(rows[found], row), key=f"{table}[{found}]")


def _values(row: SheetRow, value_id: str) -> list[str]:
    # A joint and a movement are joined by a dot in one id; so are a bone and its landmark, which stay one.
    return value_id.split(".") if row.fact_type == "action" else [value_id]


def _states(entry: Any, wanted: Mapping[str, str], part: str) -> bool:
    return entry.get("part", "") == part and all(entry.get(field) == value for field, value in wanted.items())


def _new_entry(row: SheetRow, wanted: Mapping[str, str]) -> dict[str, Any]:
    entry: dict[str, Any] = {"part": row.part} if row.part else {}
    entry |= wanted
    if row.fact_type in ("origin", "insertion") and "," in row.value:
        entry["detail"] = row.value.partition(",")[2].strip()
    if row.fact_type == "action":
        entry["role"] = "assistant"  # a sheet has no column for it; the preview shows it for correction
    if row.fact_type == "nerve":
        entry["roots"] = []
    if row.status != "core":
        entry["status"] = row.status
    return entry | {"sources": list(row.sources)}


def _corrected(entry: Any, row: SheetRow) -> bool:
    changed = False
    if entry.get("status", "core") != row.status:
        entry["status"] = row.status
        changed = True
    if row.sources and list(entry["sources"]) != list(row.sources):
        entry["sources"] = list(row.sources)
        changed = True
    return changed


def _remove(rows: Any, found: int | None, table: str) -> Applied:
    if found is None:
        return Applied(changed=False, key=table)
    del rows[found]
    return Applied(changed=True, key=table)


def _array(document: TOMLDocument, table: str) -> Any:
    if table not in document:
        document[table] = tomlkit.aot()
    return document[table]


def _table(fields: Mapping[str, Any]) -> Any:
    table = tomlkit.table()
    table.update(fields)
    table.add(tomlkit.nl())
    return table


def _segment_order(root: str) -> tuple[int, int]:
    return "CTLS".find(root[:1]), int(root[1:]) if root[1:].isdigit() else 0
