"""What is told of stations: where each bench is, by number."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class StationRow:
    """At which of the items a bench is, counted from 1."""

    bench: str
    item: int


@dataclass(frozen=True, slots=True, kw_only=True)
class StationsFace:
    """Where everybody is: no word of any item."""

    turn: int
    of: int
    """As many turns as items."""
    over: bool
    to_show: int
    """How many of the items have not been shown with their results yet."""
    rows: tuple[StationRow, ...]
