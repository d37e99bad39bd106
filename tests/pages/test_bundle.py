"""Which files a page loads."""

from pathlib import Path

import pytest

from quizroom.pages.bundle import Bundle, NotBuilt, bundle_of, read_manifest
from tests.pages.web import MANIFEST


def test_a_page_loads_its_script_and_every_chunk_and_style_once() -> None:
    assert bundle_of(MANIFEST, "seat") == Bundle(
        script="assets/seat.js",
        styles=("assets/shared.css", "assets/seat.css"),
        preloads=("assets/shared.js", "assets/base.js"),
    )


def test_chunks_that_import_each_other_are_no_trap() -> None:
    manifest = {
        "src/seat.tsx": {"file": "seat.js", "imports": ["a"]},
        "a": {"file": "a.js", "imports": ["b"]},
        "b": {"file": "b.js", "imports": ["a"]},
    }
    assert bundle_of(manifest, "seat").preloads == ("a.js", "b.js")


def test_pages_that_were_not_built_say_what_to_do(tmp_path: Path) -> None:
    with pytest.raises(NotBuilt, match="python3 -m quizroom"):
        read_manifest(tmp_path)


def test_the_manifest_is_read_from_where_the_build_wrote_it(tmp_path: Path) -> None:
    (tmp_path / ".vite").mkdir()
    (tmp_path / ".vite" / "manifest.json").write_text('{"src/seat.tsx": {"file": "x.js"}}', encoding="utf-8")
    assert bundle_of(read_manifest(tmp_path), "seat").script == "x.js"
