"""A player's own page, and the worker that keeps it on the player's device for the time without a line."""

import hashlib
import json
from collections.abc import Mapping
from pathlib import Path
from typing import Any

from flask import Blueprint, Response, render_template, url_for

from quizroom.pages.bundle import STATIC, bundle_of

PAGE = "/mine"
WORKER = f"{PAGE}/worker.js"
_SOURCE = "src/mine/worker.ts"


def add_mine(
    routes: Blueprint, manifest: Mapping[str, Any], join_address: str, folder: Path = STATIC
) -> None:
    """Give the blueprint the page and its worker.

    A browser lets a worker serve only what lies beside or below the worker's own address, so it cannot come
    from /static.
    """

    @routes.get(PAGE)
    def mine() -> str:
        return render_template(
            "page.html",
            page="mine",
            title="Second look - quizroom",
            door_code="",
            join_address=join_address,
            bundle=bundle_of(manifest, "mine"),
        )

    @routes.get(WORKER)
    def worker() -> Response:
        script = (folder / manifest[_SOURCE]["file"]).read_text(encoding="utf-8")
        files = json.dumps(_files(manifest))
        answer = Response(f"self.quizroomFiles = {files};\n{script}", mimetype="text/javascript")
        # Looked at anew each time: a new release is known by other names in the list.
        answer.headers["Cache-Control"] = "no-cache"
        answer.headers["Service-Worker-Allowed"] = PAGE
        return answer


def _files(manifest: Mapping[str, Any]) -> dict[str, Any]:
    """What the page needs without a line; the version follows from the names, those from the content."""
    bundle = bundle_of(manifest, "mine")
    names = dict.fromkeys((bundle.script, *bundle.styles, *bundle.preloads, *_fonts(manifest)))
    paths = [PAGE, *(url_for("static", filename=name) for name in names)]
    version = hashlib.sha256("\n".join(paths).encode()).hexdigest()[:16]
    return {"version": version, "paths": paths}


def _fonts(manifest: Mapping[str, Any]) -> tuple[str, ...]:
    """The fonts that any style of the build names."""
    named = (name for chunk in manifest.values() for name in chunk.get("assets", ()))
    return tuple(sorted({name for name in named if name.endswith(".woff2")}))
