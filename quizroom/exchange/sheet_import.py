"""Turning a teacher's sheet into changed TOML: previewed, checked by every content rule, all or nothing."""

import shutil
import tempfile
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from difflib import unified_diff
from pathlib import Path

import tomlkit

from quizroom.exchange.sheet_changes import CannotApply, apply_row
from quizroom.exchange.sheet_reading import Line, LineRefused, read_sheet
from quizroom.knowledge.catalogue import Catalogue
from quizroom.knowledge.finding import Finding
from quizroom.knowledge.load import load_content
from quizroom.knowledge.report import findings_of


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetImport:
    """What a sheet would do. `files` are the new texts by path in the content folder."""

    files: Mapping[str, str]
    preview: str
    refused: tuple[LineRefused, ...]
    changed: int
    unchanged: int


def import_sheet(text: str, folder: Path) -> SheetImport:
    """Apply a sheet to the content in memory; nothing is written.

    Raises:
        ValueError: the content itself cannot be read.
    """
    catalogue = load_content(folder).catalogue
    if catalogue is None:
        raise ValueError("the content has mistakes of its own: run `content check` first")
    lines, refused = read_sheet(text, catalogue)
    work = _Work(folder, catalogue)
    for line in lines:
        work.take(line)
    problems = [*refused, *work.refused]
    if not problems and work.places:
        problems += _breaches(folder, work)
    return SheetImport(
        files={} if problems else work.new_texts(),
        preview=work.preview(),
        refused=tuple(sorted(problems, key=lambda each: each.number)),
        changed=len(work.places),
        unchanged=len(lines) - len(work.places) - len(work.refused),
    )


def write_files(folder: Path, files: Mapping[str, str]) -> None:
    """Put the new texts in place, each file whole or not at all."""
    for file, text in files.items():
        path = folder / file
        fresh = path.with_name(f".{path.name}.new")
        fresh.write_text(text, encoding="utf-8")
        fresh.replace(path)


class _Work:
    """The documents that are being changed, and which line changed what."""

    def __init__(self, folder: Path, catalogue: Catalogue) -> None:
        self._folder = folder
        self._catalogue = catalogue
        self._documents: dict[str, tomlkit.TOMLDocument] = {}
        self.places: list[tuple[int, str, str]] = []
        self.refused: list[LineRefused] = []

    def take(self, line: Line) -> None:
        """Apply one line, or note why it cannot be."""
        file = self._catalogue.files["muscles", line.row.muscle]
        if file not in self._documents:
            self._documents[file] = tomlkit.parse((self._folder / file).read_text("utf-8"))
        try:
            applied = apply_row(self._documents[file], line.row, self._catalogue)
        except CannotApply as reason:
            self.refused.append(LineRefused(number=line.number, message=str(reason)))
            return
        if applied.changed:
            self.places.append((line.number, file, applied.key))

    def new_texts(self) -> dict[str, str]:
        """The texts of the files that differ."""
        return {file: text for file, (old, text) in self._texts().items() if old != text}

    def preview(self) -> str:
        """All changes as unified differences."""
        return "".join(
            "".join(unified_diff(old.splitlines(keepends=True), new.splitlines(keepends=True), file, file))
            for file, (old, new) in self._texts().items()
        )

    def _texts(self) -> dict[str, tuple[str, str]]:
        return {
            file: ((self._folder / file).read_text("utf-8"), tomlkit.dumps(document))
            for file, document in sorted(self._documents.items())
        }


def _breaches(folder: Path, work: _Work) -> list[LineRefused]:
    before = {_same(finding) for finding in findings_of(load_content(folder))}
    with tempfile.TemporaryDirectory() as place:
        copy = Path(place) / "content"
        shutil.copytree(folder, copy)
        write_files(copy, work.new_texts())
        after = findings_of(load_content(copy))
    fresh = [finding for finding in after if _same(finding) not in before]
    return [
        LineRefused(
            number=_line_of(finding, work.places),
            message=f"{finding.message} [{finding.rule}]; {finding.remedy}",
        )
        for finding in fresh
    ]


def _same(finding: Finding) -> tuple[str, str, str]:
    return finding.rule, finding.file, finding.message


def _line_of(finding: Finding, places: Iterable[tuple[int, str, str]]) -> int:
    """The line that changed the place of a finding, or at least the file of it."""
    ours = [(number, key) for number, file, key in places if file == finding.file]
    exact = [number for number, key in ours if finding.key.startswith(key)]
    return (exact or [number for number, _ in ours] or [1])[-1]
