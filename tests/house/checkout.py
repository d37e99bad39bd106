"""The files of this checkout, as git sees them: what is committed and what is about to be."""

import subprocess
from functools import cache
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parent.parent.parent
GENERATED = ("web/src/wire.ts", "web/package-lock.json")


@cache
def listed(*options: str) -> tuple[str, ...]:
    """The paths that `git ls-files` names, relative to the top; skips the test outside a git checkout."""
    try:
        command = ["git", "-C", str(ROOT), "ls-files", "-z", *options]
        said = subprocess.run(command, capture_output=True, text=True, check=True).stdout
    except (OSError, subprocess.CalledProcessError):
        pytest.skip("this is no git checkout, so nobody can tell which files belong to it")
    return tuple(sorted(path for path in said.split("\0") if path and (ROOT / path).is_file()))


def files(*suffixes: str, under: tuple[str, ...] = ("",)) -> list[str]:
    """Paths with one of the suffixes below one of the folders: committed, or new and not ignored."""
    everything = listed("--cached", "--others", "--exclude-standard")
    return [
        path
        for path in everything
        if path.endswith(suffixes) and path.startswith(under) and path not in GENERATED
    ]


def text(path: str) -> str:
    """The contents of a file of the checkout."""
    return (ROOT / path).read_text(encoding="utf-8")
