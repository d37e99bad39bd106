"""What is kept of a flag."""

from dataclasses import dataclass
from datetime import datetime


@dataclass(frozen=True, slots=True, kw_only=True)
class Flag:
    """To one player an answer of a round looks wrong. One that was taken back is kept as not `up`."""

    text: str
    at: datetime
    asked: str = ""
    """The question of a second look, if it was put up there over other words than those of the round."""
    up: bool = True
    settled: bool = False
    """Whether the host has dealt with it."""
    times: int = 1
    """How often it was put up, changed, or taken back."""
