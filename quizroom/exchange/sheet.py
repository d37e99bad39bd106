"""The knowledge base as a sheet, one fact a row (CSV after RFC 4180)."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import Literal, get_args

from quizroom.exchange.csv_files import csv_file
from quizroom.knowledge.anatomy import joints_crossed
from quizroom.knowledge.catalogue import Catalogue
from quizroom.knowledge.model import Action, Attachment, Blood, Muscle, Supply

FactType = Literal[
    "region",
    "compartment",
    "origin",
    "insertion",
    "origin_bone",
    "insertion_bone",
    "action",
    "joint_crossed",
    "nerve",
    "root",
    "artery",
    "synonym",
    "latin",
    "fma_id",
    "uberon_id",
    "name_meaning",
]
FACT_TYPES: tuple[FactType, ...] = get_args(FactType)
COLUMNS = ("muscle", "name", "part", "fact_type", "value", "value_id", "status", "sources")
COMPUTED: frozenset[FactType] = frozenset({"origin_bone", "insertion_bone", "joint_crossed"})
"""Facts that follow from others, so that a sheet cannot change them."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetRow:
    """One fact; the fields are the columns, `sources` joined by semicolons in the file."""

    muscle: str
    name: str
    part: str
    fact_type: FactType
    value: str
    value_id: str
    status: str
    sources: tuple[str, ...]


def write_sheet(rows: Iterable[SheetRow]) -> str:
    """The rows as CSV with a header, lines ended by CR LF.

    A cell that a spreadsheet would take for a formula gets an apostrophe in front.
    """
    return csv_file(COLUMNS, map(_cells, rows)).decode()


def _cells(row: SheetRow) -> tuple[str, ...]:
    return (
        row.muscle,
        row.name,
        row.part,
        row.fact_type,
        row.value,
        row.value_id,
        row.status,
        ";".join(row.sources),
    )


def sheet_rows(catalogue: Catalogue) -> Iterator[SheetRow]:
    """Every fact of every muscle, muscles by id."""
    for muscle in sorted(catalogue.muscles.values(), key=lambda each: each.id):
        yield from muscle_rows(catalogue, muscle)


def muscle_rows(catalogue: Catalogue, muscle: Muscle) -> Iterator[SheetRow]:
    """Every fact of one muscle, in the order of `FACT_TYPES`."""
    found = [
        *_plain_rows(catalogue, muscle),
        *_listed_rows(catalogue, muscle),
        *_computed_rows(catalogue, muscle),
    ]
    yield from sorted(found, key=lambda row: FACT_TYPES.index(row.fact_type))


def _plain_rows(catalogue: Catalogue, muscle: Muscle) -> Iterator[SheetRow]:
    region, compartment = catalogue.regions[muscle.region], catalogue.compartments[muscle.compartment]
    yield _row(muscle, "region", region.name, region.id)
    yield _row(muscle, "compartment", compartment.name, compartment.id)
    yield _row(muscle, "latin", muscle.latin)
    yield _row(muscle, "name_meaning", muscle.meaning)
    for name in muscle.names:
        yield _row(muscle, "synonym", name.term, name.kind)
    if muscle.ids.fma:
        yield _row(muscle, "fma_id", muscle.ids.fma, muscle.ids.fma)
    if muscle.ids.uberon:
        yield _row(muscle, "uberon_id", muscle.ids.uberon, muscle.ids.uberon)


def _listed_rows(catalogue: Catalogue, muscle: Muscle) -> Iterator[SheetRow]:
    for origin in muscle.origins:
        yield _fact(muscle, "origin", origin, _site_text(catalogue, origin), origin.site)
    for insertion in muscle.insertions:
        yield _fact(muscle, "insertion", insertion, _site_text(catalogue, insertion), insertion.site)
    for action in muscle.actions:
        joint, movement = catalogue.joints[action.joint], catalogue.movements[action.movement]
        text = f"{joint.name}: {movement.name}"
        yield _fact(muscle, "action", action, text, f"{action.joint}.{action.movement}")
    for supply in muscle.nerves:
        yield _fact(muscle, "nerve", supply, catalogue.nerves[supply.nerve].name, supply.nerve)
        for root in supply.roots:
            yield _fact(muscle, "root", supply, root, supply.nerve)
    for blood in muscle.arteries:
        yield _fact(muscle, "artery", blood, catalogue.arteries[blood.artery].name, blood.artery)


def _computed_rows(catalogue: Catalogue, muscle: Muscle) -> Iterator[SheetRow]:
    yield from (_fact(muscle, "origin_bone", *row) for row in _bone_rows(catalogue, muscle.origins))
    yield from (_fact(muscle, "insertion_bone", *row) for row in _bone_rows(catalogue, muscle.insertions))
    for part in _parts_of(muscle):
        for joint in joints_crossed(catalogue, muscle.id, part):
            yield SheetRow(
                muscle=muscle.id,
                name=muscle.name,
                part=part,
                fact_type="joint_crossed",
                value=catalogue.joints[joint].name,
                value_id=joint,
                status="core",
                sources=(),
            )


def _bone_rows(
    catalogue: Catalogue, attachments: tuple[Attachment, ...]
) -> Iterator[tuple[Attachment, str, str]]:
    seen: set[tuple[str, str, str]] = set()
    for attachment in attachments:
        landmark = catalogue.landmarks[attachment.site]
        for bone in landmark.bones if landmark.tissue == "bone" else ():
            if (attachment.part, bone, attachment.status) not in seen:
                seen.add((attachment.part, bone, attachment.status))
                yield attachment, catalogue.bones[bone].name, bone


def _parts_of(muscle: Muscle) -> tuple[str, ...]:
    return tuple(part.id for part in muscle.parts) or ("",)


def _site_text(catalogue: Catalogue, attachment: Attachment) -> str:
    label = catalogue.landmarks[attachment.site].label
    return f"{label}, {attachment.detail}" if attachment.detail else label


def _row(muscle: Muscle, fact_type: FactType, value: str, value_id: str = "") -> SheetRow:
    return SheetRow(
        muscle=muscle.id,
        name=muscle.name,
        part="",
        fact_type=fact_type,
        value=value,
        value_id=value_id,
        status="core",
        sources=muscle.sources,
    )


def _fact(
    muscle: Muscle,
    fact_type: FactType,
    row: Attachment | Action | Supply | Blood,
    value: str,
    value_id: str,
) -> SheetRow:
    return SheetRow(
        muscle=muscle.id,
        name=muscle.name,
        part=row.part,
        fact_type=fact_type,
        value=value,
        value_id=value_id,
        status=row.status,
        sources=row.sources,
    )
