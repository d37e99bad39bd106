"""Reading the content folder: the only place in the core that opens files.

Every mistake of form is collected, with its file, key and remedy; nothing is raised for bad content.
Mistakes of meaning (unknown ids, uncrossed joints) are found afterwards, by `checks`.
"""

import json
import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from fnmatch import fnmatch
from pathlib import Path
from types import GenericAlias
from typing import Any, TypeVar

import tomli
from pydantic import ConfigDict, TypeAdapter, ValidationError

from quizroom.knowledge import model
from quizroom.knowledge.catalogue import Catalogue, build_catalogue
from quizroom.knowledge.finding import Finding
from quizroom.knowledge.form import FORM, form_finding
from quizroom.knowledge.raw_entries import (
    RawEntry,
    course_entry,
    file_entry,
    keyed_entries,
    landmark_entries,
    listed_entries,
)

_Entry = TypeVar("_Entry")
_STRICT = ConfigDict(strict=True, extra="forbid")
_TABLES = (
    "sources",
    "regions",
    "compartments",
    "bones",
    "joints",
    "movements",
    "nerves",
    "levels",
    "arteries",
    "lookalikes",
    "exceptions",
    "retired",
)
"""Vocabulary: `<table>.toml`, or `<table>/<region>.toml` where one file would be too long, or both."""
_PLACES = ("landmarks/*.toml", "muscles/*/*.toml", "courses/*.toml", *(f"{one}/*.toml" for one in _TABLES))


@dataclass(frozen=True, slots=True, kw_only=True)
class Loaded:
    """What came of reading a folder.

    `catalogue` is there only if every file could be read. `draft` holds whatever could be read,
    for the content rules, and is missing if a vocabulary file could not be read at all. `unread`
    are the ids of entries that were left out.
    """

    catalogue: Catalogue | None
    draft: Catalogue | None
    findings: tuple[Finding, ...]
    unread: frozenset[str]


@dataclass(frozen=True, slots=True)
class _Retired:
    """Ids of one table that were once in use."""

    id: str
    retired: tuple[str, ...]


def content_folder() -> Path:
    """The content that came with the program: inside the package, or beside it in a checkout."""
    package = Path(__file__).resolve().parent.parent
    packed = package / "content"
    return packed if packed.is_dir() else package.parent / "content"


def load_content(folder: Path, own_courses: Sequence[Path] = ()) -> Loaded:
    """Read all content below `folder`, and course lists that lie elsewhere."""
    reader = _Reader(folder, own_courses)
    catalogue = _read_all(reader)
    reader.findings.extend(_strays(reader))
    return Loaded(
        catalogue=None if reader.findings else catalogue,
        draft=None if reader.tables_unread else catalogue,
        findings=tuple(reader.findings),
        unread=frozenset(reader.unread),
    )


def _read_all(reader: "_Reader") -> Catalogue:
    bones = reader.entries(model.Bone, reader.keyed("bones"))
    return build_catalogue(
        sources=reader.entries(model.Source, reader.keyed("sources")),
        regions=reader.entries(model.Region, reader.keyed("regions")),
        compartments=reader.entries(model.Compartment, reader.keyed("compartments")),
        bones=bones,
        landmarks=reader.entries(model.Landmark, _landmarks(reader, bones)),
        joints=reader.entries(model.Joint, reader.keyed("joints")),
        movements=reader.entries(model.Movement, reader.keyed("movements")),
        nerves=reader.entries(model.Nerve, reader.keyed("nerves")),
        levels=reader.entries(model.Level, reader.keyed("levels")),
        arteries=reader.entries(model.Artery, reader.keyed("arteries")),
        lookalikes=reader.entries(model.LookAlike, reader.keyed("lookalikes")),
        muscles=reader.entries(model.Muscle, _muscles(reader)),
        courses=reader.entries(model.Course, _courses(reader)),
        exempt=reader.entries(model.Exempt, _exceptions(reader)),
        retired={one.id: one.retired for one in reader.entries(_Retired, reader.keyed("retired"))},
        files=reader.files,
    )


def _landmarks(reader: "_Reader", bones: Iterable[model.Bone]) -> Iterator[RawEntry]:
    names = {bone.id: bone.name for bone in bones}
    for file in reader.names("landmarks/*.toml"):
        yield from landmark_entries(file, reader.vocabulary(file), names)


def _muscles(reader: "_Reader") -> Iterator[RawEntry]:
    for file in reader.names("muscles/*/*.toml"):
        table = reader.table(file)
        if table is not None:
            yield file_entry("muscles", file, table)


def _courses(reader: "_Reader") -> Iterator[RawEntry]:
    within = reader.names("courses/*.toml")
    own = (str(path.resolve()) for path in reader.own_courses)
    elsewhere = [
        path for path in own if path not in {str((reader.folder / file).resolve()) for file in within}
    ]
    for file in (*within, *elsewhere):
        table = reader.table(file)
        if table is not None:
            yield course_entry(file, table)


def _exceptions(reader: "_Reader") -> Iterator[RawEntry]:
    for file in reader.vocabulary_files("exceptions"):
        yield from listed_entries(file, "exempt", reader.vocabulary(file))


def _strays(reader: "_Reader") -> Iterator[Finding]:
    for file in reader.names("**/*.toml"):
        at_top = "/" not in file
        if file.removesuffix(".toml") not in _TABLES if at_top else not any(_fits(file, p) for p in _PLACES):
            remedy = f"move it to one of {', '.join(_PLACES)}, or remove it"
            yield Finding(rule=FORM, file=file, message="nothing reads a file of this name", remedy=remedy)


def _fits(file: str, pattern: str) -> bool:
    return fnmatch(file, pattern) and file.count("/") == pattern.count("/")


@dataclass(slots=True)
class _Reader:
    """Reads entries below a folder and keeps the findings met on the way."""

    folder: Path
    own_courses: Sequence[Path] = ()
    findings: list[Finding] = field(default_factory=list)
    unread: set[str] = field(default_factory=set)
    files: dict[tuple[str, str], str] = field(default_factory=dict)
    tables_unread: bool = False

    def names(self, pattern: str) -> list[str]:
        """Files that fit the pattern, sorted, relative to the folder."""
        return sorted(path.relative_to(self.folder).as_posix() for path in self.folder.glob(pattern))

    def keyed(self, table: str) -> Iterator[RawEntry]:
        """The raw entries of a vocabulary with one table an entry."""
        for file in self.vocabulary_files(table):
            yield from keyed_entries(table, file, self.vocabulary(file))

    def vocabulary_files(self, table: str) -> list[str]:
        """The files of a vocabulary; the one at the top is missed if there is none at all."""
        return self.names(f"{table}.toml") + self.names(f"{table}/*.toml") or [f"{table}.toml"]

    def vocabulary(self, file: str) -> Mapping[str, Any]:
        """The table of a vocabulary file, without which the content rules make no sense."""
        table = self.table(file)
        self.tables_unread |= table is None
        return table or {}

    def table(self, file: str) -> Mapping[str, Any] | None:
        """The table of a file, or None with a finding."""
        try:
            return tomli.loads((self.folder / file).read_text("utf-8"))
        except tomli.TOMLDecodeError as error:
            self._not_read(
                file, f"is not valid TOML: {error}", "mend what stands at the place named", _line(error)
            )
        except UnicodeDecodeError:
            self._not_read(file, "is not text in UTF-8", "save the file in UTF-8")
        except OSError as error:
            self._not_read(file, f"cannot be opened: {error.strerror}", "put the file in its place")
        return None

    def entries(self, kind: type[_Entry], raw_entries: Iterable[RawEntry]) -> list[_Entry]:
        """The well-formed entries among the raw ones, each id once."""
        one: Any = GenericAlias(tuple, (kind,))
        adapter: TypeAdapter[tuple[_Entry]] = TypeAdapter(one, config=_STRICT)
        entries: list[_Entry] = []
        for raw in raw_entries:
            findings = self._doubled(raw)
            if not findings:
                self.files[raw.table, raw.id] = raw.file
                try:
                    entries.extend(adapter.validate_json(json.dumps([raw.fields], default=str)))
                except ValidationError as error:
                    findings = [form_finding(raw, kind, {**problem}) for problem in error.errors()]
            if findings:
                self.findings.extend(findings)
                self.unread.add(raw.id)
        return entries

    def _doubled(self, raw: RawEntry) -> list[Finding]:
        earlier = self.files.get((raw.table, raw.id))
        if earlier is None:
            return []
        message = f'the id "{raw.id}" is already taken in {earlier}'
        return [
            Finding(rule=FORM, file=raw.file, key=raw.key, message=message, remedy="rename one of the two")
        ]

    def _not_read(self, file: str, message: str, remedy: str, line: int | None = None) -> None:
        self.unread.add(Path(file).stem)
        self.findings.append(Finding(rule=FORM, file=file, message=message, remedy=remedy, line=line))


def _line(error: tomli.TOMLDecodeError) -> int | None:
    found = re.search(r"at line (\d+)", str(error))
    return int(found.group(1)) if found else None
