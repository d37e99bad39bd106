"""Facts about benches."""

from dataclasses import dataclass
from datetime import datetime


@dataclass(frozen=True, slots=True, kw_only=True)
class BenchTaken:
    """A player sits at this bench from now on; empty: at none. `by` names the host who did it, if one did."""

    player: str
    bench: str
    by: str = ""
    at: datetime | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class BenchSeat:
    """Who was drawn to which bench."""

    player: str
    bench: str


@dataclass(frozen=True, slots=True, kw_only=True)
class BenchesDrawn:
    """Benches were drawn anew for everybody here. `by` names the host who did it, if one did."""

    seats: tuple[BenchSeat, ...]
    by: str = ""
    at: datetime | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class BenchAnswered:
    """A member handed in for the whole bench; a later one replaces it."""

    bench: str
    player: str
    round: int
    choice: tuple[str, ...]
    typed: tuple[str, ...]
    at: datetime


@dataclass(frozen=True, slots=True, kw_only=True)
class BenchRenamed:
    """A bench has this name from now on, also in the rounds before. `by` names the host."""

    bench: str
    name: str
    by: str = ""
    at: datetime | None = None


BenchEvent = BenchRenamed | BenchTaken | BenchesDrawn | BenchAnswered
