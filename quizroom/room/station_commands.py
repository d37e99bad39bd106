"""Orders about stations."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class OpenStations:
    """Ask all items ahead at once, each bench starting at another; `round` is the one that would be next."""

    round: int


@dataclass(frozen=True, slots=True, kw_only=True)
class RingBell:
    """End a turn: all benches move on, or the block is over. By the host, or by the alarm in time."""

    turn: int
    by_host: bool


StationCommand = OpenStations | RingBell
