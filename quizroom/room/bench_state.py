"""Benches: the teams that sit together and whose marks stand together."""

from dataclasses import dataclass
from typing import Literal

LEAST_AT_A_BENCH = 3
MOST_AT_A_BENCH = 6
"""Three to six talk well together; other sizes are warned of, not refused (common practice, no source)."""
LONGEST_BENCH = 24
"""Characters of a bench's name: a line of the wall holds several."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BenchRules:
    """How players come to their benches: each takes one by name, or they are drawn."""

    how: Literal["choice", "drawn"]
    size: int = 4
    """How many are to sit at a drawn bench."""
    answers: bool = True
    """Whether each bench hands in one answer of its own, after its members have answered alone."""
    talk_s: int = 60
    """So much longer is a round with a clock, for the bench to talk."""
    stations: bool = False
    """Whether benches may start at different items and move on at a bell."""
