"""The player's own page, and the worker that keeps it on the player's device."""

import json
from pathlib import Path
from typing import Any

from flask import Blueprint, Flask
from flask.testing import FlaskClient

from quizroom.pages.mine import add_mine
from tests.pages.web import MANIFEST, made

SCRIPT = "void self;\n"


def page_over(tmp_path: Path, manifest: dict[str, Any]) -> FlaskClient:
    """The page over files as the web build writes them."""
    (tmp_path / "assets").mkdir(exist_ok=True)
    (tmp_path / "assets" / "worker.js").write_text(SCRIPT, "utf-8")
    app, routes = Flask("quizroom"), Blueprint("pages", "quizroom.pages.site", template_folder="templates")
    add_mine(routes, manifest, "http://192.0.2.7:8000", tmp_path)
    app.register_blueprint(routes)
    return app.test_client()


def files_of(browser: FlaskClient) -> dict[str, Any]:
    first, rest = browser.get("/mine/worker.js").text.split("\n", 1)
    assert rest == SCRIPT
    files: dict[str, Any] = json.loads(first.removeprefix("self.quizroomFiles = ").removesuffix(";"))
    return files


def test_the_page_is_shown_to_anybody_and_holds_nothing_of_a_player() -> None:
    page = made().browser().get("/mine")
    assert page.status_code == 200
    assert 'data-page="mine"' in page.text


def test_the_worker_may_serve_the_page_beside_it(tmp_path: Path) -> None:
    answer = page_over(tmp_path, MANIFEST).get("/mine/worker.js")
    assert answer.mimetype == "text/javascript"
    assert answer.headers["Service-Worker-Allowed"] == "/mine"
    assert answer.headers["Cache-Control"] == "no-cache"


def test_the_worker_is_told_of_the_page_and_of_each_file_that_it_loads(tmp_path: Path) -> None:
    browser = page_over(tmp_path, MANIFEST)
    paths = files_of(browser)["paths"]
    assert paths[0] == "/mine"
    page = browser.get("/mine").text
    loaded = [part.split('"')[0] for part in page.split('"/static/')[1:]]
    assert loaded
    assert {f"/static/{path}" for path in loaded} < set(paths)
    assert "/static/assets/serif.woff2" in paths
    assert len(paths) == len(set(paths))


def test_the_version_changes_with_the_files_of_the_page_alone(tmp_path: Path) -> None:
    def version_with_a_newer(page: str) -> str:
        newer = {**MANIFEST[f"src/{page}.tsx"], "file": "assets/newer.js"}
        version: str = files_of(page_over(tmp_path, {**MANIFEST, f"src/{page}.tsx": newer}))["version"]
        return version

    before = files_of(page_over(tmp_path, MANIFEST))["version"]
    assert version_with_a_newer("desk") == before
    assert version_with_a_newer("mine") != before
