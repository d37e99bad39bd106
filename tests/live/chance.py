"""Chance that differs from run to run, and can be had again: `QUIZROOM_TESTS_SEED=NUMBER`."""

import os
import secrets
import sys
from random import Random

VARIABLE = "QUIZROOM_TESTS_SEED"


def chance() -> Random:
    """Dice with a seed of their own, which is told: pytest shows it with a test that fails."""
    seed = int(os.environ.get(VARIABLE, "") or secrets.randbits(32))
    sys.stdout.write(f"to throw the same dice again: {VARIABLE}={seed}\n")
    return Random(seed)  # noqa: S311 - moments and weather, no secrets
