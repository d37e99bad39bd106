"""What the repository holds: the agreed top level, plain names, sources only."""

import json
import re
from pathlib import PurePosixPath

import pytest

from tests.house.checkout import files, listed, text

TOP_LEVEL = {
    ".ci", ".gitattributes", ".gitignore", "DEVELOPERS.md", "LICENSE", "README.md", "content",
    "docker-compose.yml", "docs", "pyproject.toml", "quizroom", "tests", "web",
}  # fmt: skip
EMPTY_NAMES = {"util", "utils", "helper", "helpers", "common", "manager", "managers", "misc", "base", "core"}
BINARY = (".png", ".woff2", ".ico", ".jpg")
# Where packages come from is each machine's own setting; where a file lay on one is nobody's business.
REGISTRY_HOST = re.compile(r"\b(?:npmjs|pypi|pythonhosted|npmmirror)\.(?:org|com)\b|\bdeb\.debian\.org\b")
MACHINE_PATH = re.compile(r"(?<![\w./])/(?:work|root|home/\w+)/\w|\.\./shared\b")


def empty_names(path: str) -> set[str]:
    """The parts of a path that say nothing about what is inside."""
    parts = PurePosixPath(path).parts
    return {part for part in (*parts[:-1], PurePosixPath(path).stem) if part.lower() in EMPTY_NAMES}


def is_built(path: str) -> bool:
    """Whether a file is the product of a build, or somebody else's package."""
    parts = PurePosixPath(path).parts
    return bool({"node_modules", "static", "dist", "vendor"} & set(parts)) or path.endswith(
        (".min.js", ".map")
    )


def test_the_top_level_holds_only_what_was_agreed() -> None:
    everything = listed("--cached", "--others", "--exclude-standard")
    assert {PurePosixPath(path).parts[0] for path in everything} <= TOP_LEVEL


def test_names_say_what_is_inside() -> None:
    everything = files("", under=("quizroom/", "tests/", "web/"))
    assert [path for path in everything if empty_names(path)] == []


def test_nothing_built_is_committed() -> None:
    assert [path for path in listed("--cached") if is_built(path)] == []


def test_the_browser_side_is_written_in_typescript() -> None:
    assert [path for path in listed("--cached") if path.endswith((".js", ".jsx"))] == []


def test_no_file_names_a_registry_or_a_place_on_one_machine() -> None:
    readable = [path for path in listed("--cached") if not path.endswith(BINARY)]
    rules = ("tests/house/test_checkout.py",)
    found = [
        path
        for path in readable
        if path not in rules and (REGISTRY_HOST.search(text(path)) or MACHINE_PATH.search(text(path)))
    ]
    assert found == []


def test_the_lock_file_holds_no_addresses() -> None:
    packages = json.loads(text("web/package-lock.json"))["packages"]
    assert [name for name, package in packages.items() if "resolved" in package] == []
    assert not [path for path in listed("--cached") if path.endswith("uv.lock")]


@pytest.mark.parametrize("path", ["quizroom/utils/text.py", "quizroom/room/helpers.py", "web/src/common.ts"])
def test_an_empty_name_is_found(path: str) -> None:
    assert empty_names(path)


@pytest.mark.parametrize(
    "path", ["quizroom/room/rules.py", "tests/house/test_checkout.py", "web/src/seat.tsx"]
)
def test_a_plain_name_passes(path: str) -> None:
    assert not empty_names(path)


@pytest.mark.parametrize(
    "line",
    [
        "https://registry.npmjs.org/x",
        "index-url = https://pypi.org/simple",
        "see ../shared/a.md",
        "cd /work/main",
    ],
)
def test_a_registry_or_a_machine_path_is_found(line: str) -> None:
    assert REGISTRY_HOST.search(line) or MACHINE_PATH.search(line)


@pytest.mark.parametrize("path", ["quizroom/static/a.js", "web/node_modules/a/b.js", "web/src/a.min.js"])
def test_a_built_file_is_found(path: str) -> None:
    assert is_built(path)
