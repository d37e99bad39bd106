"""The browser's side passes its own checkers and tests, and agrees with the server about the wire."""

import os
import subprocess
import sys
from pathlib import Path
from typing import NamedTuple

import pytest

from tests.house.checkout import ROOT
from web.node_build import system_npm

WEB = ROOT / "web"


class Check(NamedTuple):
    """A program out of `web/node_modules`, or a script of `web/`, and what it is told."""

    program: str
    arguments: tuple[str, ...] = ()


CHECKS = {
    "types": Check("node_modules/.bin/tsc", ("--noEmit",)),
    "style": Check("node_modules/.bin/biome", ("check", ".")),
    "behaviour": Check("node_modules/.bin/vitest", ("run",)),
    "wire": Check("generate_types.mjs", ("--check",)),
}


@pytest.fixture(scope="session")
def node() -> str:
    """A Node that runs the checkers: the system's when it is fit, else the one inside Playwright."""
    if not (WEB / "node_modules" / "vitest").exists():
        pytest.skip("web/node_modules holds no checkers; `python3 -m tests` installs them")
    if system_npm():
        return "node"
    from playwright._impl._driver import compute_driver_executable  # noqa: PLC0415 - only where it is needed

    packaged = compute_driver_executable()[0]
    if subprocess.run([packaged, "--version"], capture_output=True, check=False).returncode != 0:
        pytest.skip("no Node runs here; on Debian or Ubuntu: apt install libatomic1")
    return packaged


@pytest.mark.parametrize("check", CHECKS)
def test_the_browser_side_passes(check: str, node: str) -> None:
    program, arguments = CHECKS[check]
    path = os.pathsep.join([str(Path(node).parent), os.environ["PATH"]])
    environment = {**os.environ, "PATH": path, "PYTHON": sys.executable, "NO_COLOR": "1", "CI": "true"}
    ran = subprocess.run(
        [node, program, *arguments], cwd=WEB, env=environment, capture_output=True, text=True, check=False
    )
    assert ran.returncode == 0, ran.stdout + ran.stderr
