"""What runs on the build machine is what a reader of the README runs, with nothing left out."""

import os
import subprocess
import sys
from pathlib import Path

import pytest

from tests.house.checkout import ROOT, text

CI = ".ci/run"
TEST_COMMAND = "python3 -m tests"


def test_the_build_machine_gives_the_test_command_of_the_readme() -> None:
    assert f"\n{TEST_COMMAND}\n" in text("README.md")
    assert text(CI).splitlines()[-1] == f"exec {TEST_COMMAND}"


def test_the_build_machine_skips_nothing() -> None:
    assert "export QUIZROOM_TESTS_SKIP_NOTHING=1" in text(CI)


def test_the_script_is_a_program_that_bash_can_read() -> None:
    assert os.access(ROOT / CI, os.X_OK)
    assert subprocess.run(["bash", "-n", str(ROOT / CI)], check=False).returncode == 0


@pytest.mark.parametrize(
    "source",
    [
        "import pytest\npytest.skip('no reason', allow_module_level=True)",
        "import pytest\ndef test_it():\n    pytest.skip('no reason')",
    ],
)
def test_a_skip_is_a_failure_only_where_nothing_may_be_skipped(tmp_path: Path, source: str) -> None:
    (tmp_path / "test_skipping.py").write_text(f"{source}\n")
    assert run_tests_below(tmp_path, skip_nothing="") in (0, 5)  # pytest's codes: passed, no tests ran
    assert run_tests_below(tmp_path, skip_nothing="1") in (1, 2)  # failed, not collected


def run_tests_below(folder: Path, *, skip_nothing: str) -> int:
    """The exit code of a pytest run with this project's conftest over a folder of tests."""
    command = [
        sys.executable,
        "-m",
        "pytest",
        "-q",
        "-p",
        "tests.conftest",
        "--rootdir",
        str(folder),
        str(folder),
    ]
    environment = {**os.environ, "QUIZROOM_TESTS_SKIP_NOTHING": skip_nothing}
    return subprocess.run(command, cwd=ROOT, env=environment, capture_output=True, check=False).returncode
