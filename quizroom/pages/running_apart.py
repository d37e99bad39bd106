"""Work that takes long or much, done where it holds nobody up, and one piece at a time."""

from collections.abc import Callable
from threading import Lock
from typing import Any

Apart = Callable[..., Any]
"""Calls a function with its arguments where it holds nobody up, and returns what it returns."""


def run_here(work: Callable[..., Any], *given: Any) -> Any:
    """Call it where we are: there is nobody else to be held up."""
    return work(*given)


def one_at_a_time(run_apart: Apart) -> Apart:
    """The same for one caller after the other: drawing a picture takes hundreds of megabytes for a moment."""
    turn = Lock()

    def in_turn(work: Callable[..., Any], *given: Any) -> Any:
        with turn:
            return run_apart(work, *given)

    return in_turn
