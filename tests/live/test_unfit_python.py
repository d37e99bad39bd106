"""A Python that is too old, or bare: the first files must be readable to it and need nothing."""

import ast
import subprocess

import pytest

from tests.live.laid_out_checkout import PYTHON, ROOT


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
