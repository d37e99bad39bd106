"""The first start, the second start, and the sentences for a computer that cannot start.

A checkout is laid out in a temporary folder: the real bootstrap, a virtual environment, and in place of
pip, the page build and the command line small programs that write down how they were called.
"""

import ast
import shutil
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from typing import NamedTuple

import pytest

ROOT = Path(__file__).resolve().parent.parent.parent
PYTHON = str(Path(sys.executable).resolve())  # outside our own environment, as a newcomer's is
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


@pytest.fixture(scope="module")
def environment(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """An empty virtual environment, copied for each test."""
    made = tmp_path_factory.mktemp("environment") / ".venv"
    subprocess.run([PYTHON, "-m", "venv", "--without-pip", str(made)], check=True)
    return made


@pytest.fixture
def checkout(tmp_path: Path, environment: Path) -> Checkout:
    made = Checkout(tmp_path / "checkout", tmp_path / "calls", tmp_path / "codes")
    made.codes.mkdir()
    shutil.copytree(environment, made.folder / ".venv", symlinks=True)
    for name in (
        "quizroom/__init__.py",
        "quizroom/__main__.py",
        "quizroom/bootstrap.py",
        "tests/__main__.py",
    ):
        (made.folder / name).parent.mkdir(exist_ok=True)
        shutil.copy(ROOT / name, made.folder / name)
    lay_out(made, "pip", next(made.folder.glob(".venv/lib/*/site-packages")) / "pip" / "__main__.py")
    lay_out(made, "node_build", made.folder / "web" / "node_build.py")
    lay_out(made, "command_line", made.folder / "quizroom" / "cli.py")
    lay_out(made, "pytest", made.folder / "pytest.py")
    for name in ("pyproject.toml", "web/hatch_build.py", "web/package.json", "web/src/seat.tsx"):
        (made.folder / name).parent.mkdir(exist_ok=True)
        (made.folder / name).write_text("")
    manifest = made.folder / "quizroom" / "static" / ".vite" / "manifest.json"
    manifest.parent.mkdir(parents=True)
    manifest.write_text("{}")
    say_which_python(made)
    return made


def lay_out(checkout: Checkout, name: str, place: Path) -> None:
    """Put a program that writes down its call in the place of another."""
    place.parent.mkdir(exist_ok=True)
    program = WRITES_DOWN.format(name=name, calls=str(checkout.calls), codes=str(checkout.codes))
    if name == "command_line":
        program = "def main():\n" + program.replace("\n", "\n    ")
    place.write_text(program)
    checkout.ends_with(name, 0)


def say_which_python(checkout: Checkout) -> None:
    """As after a start that was cut short: the environment is there, nothing is installed."""
    version = f"{sys.version_info.major}.{sys.version_info.minor}"
    (checkout.folder / ".venv" / "quizroom-stamp").write_text(f"python {version}\n")


def test_the_first_start_installs_and_hands_over_what_it_was_told(checkout: Checkout) -> None:
    ran = checkout.run("-m", "quizroom", "serve", "--port", "0")
    assert ran.returncode == 0, ran.stderr
    pip_call, hand_over = checkout.calls.read_text().splitlines()
    assert pip_call.startswith("pip install")
    assert pip_call.endswith(f"--editable {checkout.folder}")
    assert hand_over == "command_line serve --port 0"


def test_the_second_start_installs_nothing(checkout: Checkout) -> None:
    checkout.run("-m", "quizroom")
    checkout.called()
    checkout.run("-m", "quizroom")
    assert checkout.called() == ["command_line"]


def test_the_exit_code_is_that_of_the_program(checkout: Checkout) -> None:
    checkout.ends_with("command_line", 3)
    assert checkout.run("-m", "quizroom").returncode == 3


def test_the_tests_come_with_their_packages_and_a_later_start_keeps_them(checkout: Checkout) -> None:
    checkout.run("-m", "tests", "-k", "some")
    pip_call, hand_over = checkout.calls.read_text().splitlines()
    assert pip_call.endswith(f"--editable {checkout.folder}[test]")
    assert hand_over == "pytest -k some"
    checkout.called()
    checkout.run("-m", "quizroom")
    assert checkout.called() == ["command_line"]


@pytest.mark.parametrize(
    "edited,expected",
    [
        ("pyproject.toml", ["pip", "command_line"]),
        ("web/hatch_build.py", ["pip", "command_line"]),
        ("web/src/seat.tsx", ["node_build", "command_line"]),
        ("web/package.json", ["node_build", "command_line"]),
        ("quizroom/bootstrap.py", ["command_line"]),
    ],
)
def test_a_start_after_an_edit_makes_anew_only_what_the_edit_concerns(
    checkout: Checkout, edited: str, expected: list[str]
) -> None:
    checkout.run("-m", "quizroom")
    checkout.called()
    checkout.append(edited, "# edited")
    checkout.run("-m", "quizroom")
    assert checkout.called() == expected
    checkout.run("-m", "quizroom")
    assert checkout.called() == ["command_line"]


def remove_pages(checkout: Checkout) -> None:
    shutil.rmtree(checkout.folder / "quizroom" / "static")


def add_page(checkout: Checkout) -> None:
    (checkout.folder / "web" / "src" / "wall.tsx").write_text("")


@pytest.mark.parametrize("change", [remove_pages, add_page])
def test_pages_that_are_missing_or_new_are_built(
    checkout: Checkout, change: Callable[[Checkout], None]
) -> None:
    checkout.run("-m", "quizroom")
    checkout.called()
    change(checkout)
    checkout.run("-m", "quizroom")
    assert checkout.called() == ["node_build", "command_line"]


def test_without_a_fit_node_the_pages_are_built_by_a_whole_install(checkout: Checkout) -> None:
    checkout.run("-m", "quizroom")
    checkout.called()
    checkout.append("web/src/seat.tsx", "// edited")
    checkout.ends_with("node_build", 75)
    checkout.run("-m", "quizroom")
    assert checkout.called() == ["node_build", "pip", "command_line"]


@pytest.mark.parametrize("program,sentence", [("pip", "connect it"), ("node_build", "could not be built")])
def test_a_failed_step_is_told_and_tried_again(checkout: Checkout, program: str, sentence: str) -> None:
    if program == "node_build":
        checkout.run("-m", "quizroom")
        checkout.append("web/src/seat.tsx", "// edited")
        checkout.called()
    checkout.ends_with(program, 1)
    failed = checkout.run("-m", "quizroom")
    assert failed.returncode == 1
    assert sentence in failed.stderr
    assert checkout.called() == [program]
    checkout.ends_with(program, 0)
    checkout.run("-m", "quizroom")
    assert checkout.called() == [program, "command_line"]


def test_without_any_pip_the_start_says_what_to_install(checkout: Checkout) -> None:
    shutil.rmtree(next(checkout.folder.glob(".venv/lib/*/site-packages/pip")))
    ran = checkout.run("-S", "-m", "quizroom")  # -S: without the packages that came with this Python
    assert ran.returncode == 1
    assert "apt install python3-pip" in ran.stderr


@pytest.mark.parametrize("module", ["quizroom", "tests"])
def test_an_old_python_is_told_so_in_a_sentence(module: str) -> None:
    program = (
        "import runpy, sys; sys.version_info = (3, 9, 2); sys.version = '3.9.2 (main)';"
        f" runpy.run_module({module!r}, run_name='__main__')"
    )
    ran = subprocess.run([PYTHON, "-c", program], cwd=ROOT, capture_output=True, text=True, check=False)
    assert ran.returncode == 1
    assert "3.11 or newer, and this is 3.9.2" in ran.stderr
    assert "Traceback" not in ran.stderr


@pytest.mark.parametrize(
    "name", ["quizroom/__init__.py", "quizroom/__main__.py", "tests/__init__.py", "tests/__main__.py"]
)
def test_what_an_old_python_reads_first_is_written_so_that_it_can(name: str) -> None:
    ast.parse((ROOT / name).read_text(), feature_version=(3, 7))


def test_the_bootstrap_needs_nothing_but_the_standard_library_and_little_of_it() -> None:
    unwanted = {"subprocess", "venv", "json", "email"}
    program = f"import sys; sys.path.insert(0, {str(ROOT)!r}); import quizroom.bootstrap; print(*sys.modules)"
    command = [PYTHON, "-I", "-S", "-c", program]
    ran = subprocess.run(command, capture_output=True, text=True, check=True)
    assert not unwanted & set(ran.stdout.split())
