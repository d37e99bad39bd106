"""Which script and style files a page loads, from the manifest that the web build wrote."""

import json
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

STATIC = Path(__file__).resolve().parent.parent / "static"


class NotBuilt(Exception):
    """The web build has not been run."""


@dataclass(frozen=True, slots=True)
class Bundle:
    """Addresses below /static for one page."""

    script: str
    styles: tuple[str, ...]
    preloads: tuple[str, ...]


def read_manifest(folder: Path = STATIC) -> Mapping[str, Any]:
    """The build's manifest.

    Raises:
        NotBuilt: with what to do about it.
    """
    path = folder / ".vite" / "manifest.json"
    if not path.exists():
        raise NotBuilt(
            "The pages have not been built. Run `python3 -m quizroom` from the checkout to build them."
        )
    manifest: Mapping[str, Any] = json.loads(path.read_text(encoding="utf-8"))
    return manifest


def bundle_of(manifest: Mapping[str, Any], page: str) -> Bundle:
    """The files of a page, with those of the chunks it imports."""
    entry = manifest[f"src/{page}.tsx"]
    chunks = _chunks(manifest, entry, seen={})
    styles = [style for chunk in (*chunks.values(), entry) for style in chunk.get("css", ())]
    return Bundle(
        script=entry["file"],
        styles=tuple(dict.fromkeys(styles)),
        preloads=tuple(chunk["file"] for chunk in chunks.values()),
    )


def _chunks(manifest: Mapping[str, Any], entry: Mapping[str, Any], seen: dict[str, Any]) -> dict[str, Any]:
    for name in entry.get("imports", ()):
        if name not in seen:
            seen[name] = manifest[name]
            _chunks(manifest, manifest[name], seen)
    return seen
