"""The checkers find nothing, and whoever asks them to look away says why."""

import subprocess
import sys

import pytest

from tests.house.checkout import ROOT, files, text
from tests.house.exemptions import unexplained


def complaints(*command: str) -> str:
    """What a checker says when it does not pass; nothing when it does."""
    ran = subprocess.run(
        [sys.executable, "-m", *command], cwd=ROOT, capture_output=True, text=True, check=False
    )
    return "" if ran.returncode == 0 else ran.stdout + ran.stderr


def test_ruff_finds_nothing() -> None:
    assert complaints("ruff", "check", "--quiet", "--output-format=concise") == ""


def test_mypy_finds_nothing() -> None:
    assert complaints("mypy", "--no-error-summary") == ""


def test_every_exemption_says_why() -> None:
    source = files(".py", ".ts", ".tsx", ".mjs", under=("quizroom/", "tests/", "web/"))
    assert [finding for path in source for finding in unexplained(path, text(path))] == []


@pytest.mark.parametrize(
    "path,line",
    [
        ("x.py", "a = 1  # noqa"),
        ("x.py", "a = 1  # noqa: E501"),
        ("x.py", "a = 1  # noqa: E501 -"),
        ("x.py", "# ruff: noqa: E402"),
        ("x.py", "a = 1  # type: ignore"),
        ("x.py", "a = 1  # type: ignore  # because of this"),
        ("x.py", "a = 1  # type: ignore[arg-type]"),
        ("x.py", "a = 1  # pragma: no cover"),
        ("x.ts", "// @ts-ignore"),
        ("x.ts", "// @ts-expect-error"),
        ("x.tsx", "// biome-ignore lint/a11y/useSemanticElements"),
    ],
)
def test_an_exemption_without_a_reason_is_found(path: str, line: str) -> None:
    assert unexplained(path, line + "\n") != []


@pytest.mark.parametrize(
    "path,line",
    [
        ("x.py", "a = 1  # noqa: E501, S606 - the address is longer"),
        ("x.py", "a = 1  # noqa: E501 -- the address is longer"),
        ("x.py", "a = 1  # noqa: E501 - likewise"),
        ("x.py", "a = 1  # type: ignore[arg-type]  # the stub is wrong here"),
        ("x.py", "a = '# noqa'"),
        ("x.ts", "// @ts-expect-error: the page has no such property yet"),
        ("x.tsx", "// biome-ignore lint/a11y/useSemanticElements: a fieldset cannot be a grid"),
    ],
)
def test_an_exemption_with_a_reason_passes(path: str, line: str) -> None:
    assert unexplained(path, line + "\n") == []
