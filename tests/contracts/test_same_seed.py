"""The same seed gives the same items on every computer."""

import os
import subprocess
import sys

import pytest

pytestmark = pytest.mark.live
COURSE = "arm_and_forearm"


def printed_items(seed: int, hash_seed: str) -> str:
    """What `quizroom items` prints in a process whose sets are laid out by `hash_seed`."""
    command = [sys.executable, "-m", "quizroom", "items", "--course", COURSE, "--seed", str(seed)]
    environment = {**os.environ, "PYTHONHASHSEED": hash_seed}
    ran = subprocess.run(
        [*command, "--rounds", "60", "--format", "jsonl"],
        env=environment,
        capture_output=True,
        text=True,
        check=False,
    )
    assert ran.returncode == 0, ran.stderr
    assert ran.stdout.count("\n") == 60
    return ran.stdout


def test_the_order_in_which_python_keeps_sets_does_not_show_in_items() -> None:
    assert printed_items(1, hash_seed="1") == printed_items(1, hash_seed="2")


def test_another_seed_gives_other_items() -> None:
    assert printed_items(1, hash_seed="1") != printed_items(2, hash_seed="1")
