"""The first start, the second start, and the start after something changed or failed."""

import shutil
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.live.laid_out_checkout import Checkout, empty_environment, laid_out


@pytest.fixture(scope="module")
def environment(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return empty_environment(tmp_path_factory.mktemp("environment") / ".venv")


@pytest.fixture
def checkout(tmp_path: Path, environment: Path) -> Checkout:
    return laid_out(tmp_path, environment)


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
