"""Arrows point one way, and only the server's entry knows which async driver runs below it."""

import ast
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from tests.house.checkout import ROOT, files, text
from tests.house.purity import imports

DRIVERS = {"eventlet", "gevent"}
ENTRY = "quizroom/app.py"
# Parse at the edge, trust inside: content, wire, settings, and what is stored (log and looks) are the edges.
EDGES = (
    "quizroom/knowledge/load.py",
    "quizroom/protocol/",
    "quizroom/settings.py",
    "quizroom/exchange/review_file/",
    "quizroom/storage/event_codec.py",
    "quizroom/storage/look_codec.py",
    "quizroom/storage/own_item_codec.py",
)


def lint_imports(folder: Path) -> tuple[int, str]:
    command = [str(Path(sys.executable).with_name("lint-imports")), "--no-cache"]
    ran = subprocess.run(command, cwd=folder, capture_output=True, text=True, check=False)
    return ran.returncode, ran.stdout + ran.stderr


def test_imports_point_downwards_without_circles() -> None:
    code, said = lint_imports(ROOT)
    assert code == 0, said


@pytest.mark.parametrize(
    "module,line",
    [
        ("quizroom/knowledge/model.py", "import quizroom.room.state"),
        ("quizroom/room/events.py", "def f() -> None:\n    from quizroom.views import public_model"),
        ("quizroom/stray.py", '"""A module that no layer names."""'),
        ("quizroom/room/state.py", "import quizroom.room.rules"),
    ],
)
def test_an_arrow_upwards_a_circle_or_a_stray_module_is_found(tmp_path: Path, module: str, line: str) -> None:
    shutil.copytree(
        ROOT / "quizroom", tmp_path / "quizroom", ignore=shutil.ignore_patterns("static", "__pycache__")
    )
    shutil.copy(ROOT / "pyproject.toml", tmp_path)
    with (tmp_path / module).open("a", encoding="utf-8") as source:
        source.write(f"\n{line}\n")
    assert lint_imports(tmp_path)[0] != 0


def driver_names(path: str, source: str) -> list[str]:
    """Where a file imports an async driver, or names one as a value."""
    tree = ast.parse(source)
    imported = [use for use in imports(tree) if use.what.partition(".")[0] in DRIVERS]
    named = [node for node in ast.walk(tree) if isinstance(node, ast.Constant) and node.value in DRIVERS]
    return [f"{path}:{use.line}" for use in imported] + [f"{path}:{node.lineno}" for node in named]


def test_only_the_entry_of_the_server_names_an_async_driver() -> None:
    others = [path for path in files(".py", under=("quizroom/", "web/")) if path != ENTRY]
    assert [where for path in others for where in driver_names(path, text(path))] == []


def test_no_test_imports_an_async_driver_into_its_own_process() -> None:
    found = [use for path in files(".py", under=("tests/",)) for use in imports(ast.parse(text(path)))]
    assert [use for use in found if use.what.partition(".")[0] in DRIVERS] == []


@pytest.mark.parametrize("source", ["import eventlet", "from eventlet import wsgi", "mode = 'eventlet'"])
def test_a_named_driver_is_found(source: str) -> None:
    assert driver_names("x.py", source) == ["x.py:1"]


def test_only_the_four_edges_parse_with_pydantic() -> None:
    inside = [path for path in files(".py", under=("quizroom/",)) if not path.startswith(EDGES)]
    parsing = [
        path for path in inside for use in imports(ast.parse(text(path))) if use.what.startswith("pydantic")
    ]
    assert parsing == []
