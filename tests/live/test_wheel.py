"""What is packed for a computer without the checkout is whole, and holds nothing else."""

import os
import shutil
import subprocess
import sys
import zipfile
from importlib.util import find_spec
from pathlib import Path

import pytest

from tests.house.checkout import ROOT, listed
from web.node_build import system_npm


@pytest.fixture(scope="module")
def wheel(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A wheel built from a copy, so that the pages of the checkout are left alone."""
    source, target = tmp_path_factory.mktemp("source"), tmp_path_factory.mktemp("target")
    for path in listed("--cached", "--others", "--exclude-standard"):
        (source / path).parent.mkdir(parents=True, exist_ok=True)
        shutil.copy2(ROOT / path, source / path)  # with its time, lest npm takes what is installed for stale
    (source / "web" / "node_modules").symlink_to(ROOT / "web" / "node_modules")
    build = [sys.executable, "-m", "hatchling", "build", "-t", "wheel", "-d", str(target)]
    if not system_npm():  # only an isolated build may fetch a Node for itself
        python = sys.executable if find_spec("pip") else str(Path(sys.executable).resolve())
        build = [python, "-m", "pip", "wheel", "--no-deps", "--wheel-dir", str(target), str(source)]
    environment = {**os.environ, "QUIZROOM_EXTRA": "test"}  # what lies in node_modules is good as it is
    ran = subprocess.run(build, cwd=source, env=environment, capture_output=True, text=True, check=False)
    assert ran.returncode == 0, ran.stdout + ran.stderr
    return next(target.glob("*.whl"))


def test_the_wheel_holds_program_content_and_pages(wheel: Path) -> None:
    names = set(zipfile.ZipFile(wheel).namelist())
    content = {f"quizroom/{path}" for path in listed("--cached") if path.startswith("content/")}
    assert names >= content | {"quizroom/__main__.py", "quizroom/static/.vite/manifest.json"}
    for kind in (".js", ".css"):
        assert [name for name in names if name.startswith("quizroom/static/assets/") and name.endswith(kind)]


def test_the_wheel_holds_no_sources_of_tests_or_pages(wheel: Path) -> None:
    tops = {name.partition("/")[0] for name in zipfile.ZipFile(wheel).namelist()}
    assert {top for top in tops if not top.endswith(".dist-info")} == {"quizroom"}
    assert not [name for name in zipfile.ZipFile(wheel).namelist() if name.endswith((".ts", ".tsx"))]


def test_an_installed_wheel_runs_and_finds_its_content(wheel: Path, tmp_path: Path) -> None:
    installed = tmp_path / "installed"
    zipfile.ZipFile(wheel).extractall(installed)
    command = [sys.executable, "-m", "quizroom", "content", "check"]
    environment = {**os.environ, "PYTHONPATH": str(installed)}
    ran = subprocess.run(command, cwd=tmp_path, env=environment, capture_output=True, text=True, check=False)
    assert ran.returncode == 0, ran.stdout + ran.stderr
