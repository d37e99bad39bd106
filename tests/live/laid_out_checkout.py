"""A checkout laid out in a temporary folder, where nothing real is installed.

It holds the real bootstrap and, in place of pip, the page build, the command line and pytest, small
programs that write down how they were called and end as they are told.
"""

import shutil
import subprocess
import sys
from pathlib import Path
from typing import NamedTuple

ROOT = Path(__file__).resolve().parent.parent.parent
PYTHON = str(Path(sys.executable).resolve())  # outside our own environment, as a newcomer's is
BOOTSTRAP = ("quizroom/__init__.py", "quizroom/__main__.py", "quizroom/bootstrap.py", "tests/__main__.py")
INPUTS = ("pyproject.toml", "web/hatch_build.py", "web/package.json", "web/src/seat.tsx")
WRITES_DOWN = """
import pathlib, sys
with pathlib.Path({calls!r}).open("a") as calls:
    print("{name}", *sys.argv[1:], file=calls)
sys.exit(int(pathlib.Path({codes!r}, "{name}").read_text()))
"""


class Checkout(NamedTuple):
    """A laid out checkout, and what was called in it."""

    folder: Path
    calls: Path
    codes: Path

    def run(self, *words: str) -> subprocess.CompletedProcess[str]:
        """Run Python in the checkout with a Python that knows nothing of it."""
        return subprocess.run([PYTHON, *words], cwd=self.folder, capture_output=True, text=True, check=False)

    def called(self) -> list[str]:
        """The programs called since the last look, without their arguments."""
        lines = self.calls.read_text().splitlines() if self.calls.exists() else []
        self.calls.unlink(missing_ok=True)
        return [line.split()[0] for line in lines]

    def ends_with(self, program: str, code: int) -> None:
        """Let a program end with an exit code from now on."""
        (self.codes / program).write_text(str(code))

    def append(self, name: str, line: str) -> None:
        """Edit a file of the checkout."""
        with (self.folder / name).open("a") as file:
            file.write(f"{line}\n")


def empty_environment(place: Path) -> Path:
    """A virtual environment with nothing in it."""
    subprocess.run([PYTHON, "-m", "venv", "--without-pip", str(place)], check=True)
    return place


def laid_out(folder: Path, environment: Path) -> Checkout:
    """A checkout below the folder, as after a start that was cut short before anything was installed."""
    checkout = Checkout(folder / "checkout", folder / "calls", folder / "codes")
    checkout.codes.mkdir()
    shutil.copytree(environment, checkout.folder / ".venv", symlinks=True)
    for name in BOOTSTRAP:
        write(checkout, name, (ROOT / name).read_text())
    for name in INPUTS:
        write(checkout, name, "")
    write(checkout, "quizroom/static/.vite/manifest.json", "{}")
    write(checkout, ".venv/quizroom-stamp", f"python {sys.version_info.major}.{sys.version_info.minor}\n")
    packages = next(checkout.folder.glob(".venv/lib/*/site-packages")).relative_to(checkout.folder)
    put_program(checkout, "pip", f"{packages}/pip/__main__.py")
    put_program(checkout, "node_build", "web/node_build.py")
    put_program(checkout, "command_line", "quizroom/cli.py")
    put_program(checkout, "pytest", "pytest.py")
    return checkout


def write(checkout: Checkout, name: str, text: str) -> None:
    """Put a file into the checkout."""
    place = checkout.folder / name
    place.parent.mkdir(parents=True, exist_ok=True)
    place.write_text(text)


def put_program(checkout: Checkout, name: str, place: str) -> None:
    """Put a program that writes down its call in the place of another."""
    program = WRITES_DOWN.format(name=name, calls=str(checkout.calls), codes=str(checkout.codes))
    if name == "command_line":
        program = "def main():\n" + program.replace("\n", "\n    ")
    write(checkout, place, program)
    checkout.ends_with(name, 0)
