"""Raw tables of the content files turned into one mapping of fields an entry.

What a file need not say is filled in here: ids from keys and file names, the bone of a landmark
from its table, and the label of a landmark.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import PurePosixPath
from typing import Any

Table = Mapping[str, Any]


@dataclass(frozen=True, slots=True)
class RawEntry:
    """The fields of one entry of a table, with the file and key at which it stands.

    The key is empty if the whole file is the entry. The fields are what the file holds there,
    which need not be a table of fields at all.
    """

    table: str
    id: str
    file: str
    key: str
    fields: object


def keyed_entries(table: str, file: str, entries: Table) -> Iterator[RawEntry]:
    """Entries of a file with one table an entry: the key is the id."""
    for key, fields in entries.items():
        yield _entry(table, key, file, key, fields)


def file_entry(table: str, file: str, fields: Table) -> RawEntry:
    """The entry of a file of its own: the file name is the id."""
    return _entry(table, PurePosixPath(file).stem, file, "", fields)


def course_entry(file: str, fields: Table) -> RawEntry:
    """A course; its preferred terms may be written as a table of terms by concept."""
    preferred = fields.get("preferred")
    if isinstance(preferred, Mapping):
        fields = {**fields, "preferred": list(preferred.items())}
    return file_entry("courses", file, fields)


def landmark_entries(file: str, entries: Table, bone_names: Mapping[str, str]) -> Iterator[RawEntry]:
    """Landmarks, nested by bone: `[scapula.acromion]` gives the id `scapula.acromion`."""
    for bone, landmarks in entries.items():
        if not isinstance(landmarks, Mapping):
            yield _entry("landmarks", bone, file, bone, landmarks)
            continue
        for key, fields in landmarks.items():
            place = f"{bone}.{key}"
            yield _entry("landmarks", place, file, place, _filled(fields, bone, bone_names))


def listed_entries(file: str, key: str, entries: Table) -> Iterator[RawEntry]:
    """Entries of an array of tables; they have no id, so their place stands in for it."""
    for name, rows in entries.items():
        if name != key or not isinstance(rows, list):
            yield RawEntry(file, name, file, name, rows)
            continue
        for position, fields in enumerate(rows):
            place = f"{key}[{position}]"
            yield RawEntry(file, place, file, place, fields)


def _entry(table: str, entry_id: str, file: str, key: str, fields: object) -> RawEntry:
    """With its id among the fields; an id that the file writes out is kept as a field too many."""
    if not isinstance(fields, Mapping):
        return RawEntry(table, entry_id, file, key, fields)
    written = {"id (taken from the key or file name)": fields["id"]} if "id" in fields else {}
    return RawEntry(table, entry_id, file, key, {**fields, **written, "id": entry_id})


def _filled(fields: object, bone: str, bone_names: Mapping[str, str]) -> object:
    if not isinstance(fields, Mapping) or bone not in bone_names:
        return fields
    label = f"{fields.get('name')} of the {bone_names[bone]}"
    return {"bones": [bone], "label": label, **fields}
