"""Facts about stations."""

from dataclasses import dataclass
from datetime import datetime
from typing import Literal

from quizroom.room.state import Certainty


@dataclass(frozen=True, slots=True, kw_only=True)
class StationsOpened:
    """All items ahead are asked at once; the first of them will be round `round`."""

    round: int
    at: datetime
    closes_at: datetime | None


@dataclass(frozen=True, slots=True, kw_only=True)
class StationAnswered:
    """A raw answer to the item that will be round `round`, by a player, or by a member for the whole `bench`.

    `took_ms` is how long the player had had the item before.
    """

    player: str
    bench: str
    round: int
    choice: tuple[str, ...]
    typed: tuple[str, ...]
    at: datetime
    took_ms: int
    certainty: Certainty | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class BellRung:
    """Turn `turn` has ended. All move on until `closes_at`, or the block is `over`."""

    turn: int
    cause: Literal["host", "time", "end"]
    over: bool
    at: datetime
    closes_at: datetime | None


@dataclass(frozen=True, slots=True, kw_only=True)
class StationTimeAdded:
    """The turn got `ms` more, by the host or for time lost while no server was there."""

    ms: int
    cause: Literal["host", "outage"]
    order: str


@dataclass(frozen=True, slots=True, kw_only=True)
class StationShown:
    """The item that is round `round` is shown with its result, as after the closing of a round."""

    round: int
    at: datetime


StationEvent = StationsOpened | StationAnswered | BellRung | StationTimeAdded | StationShown
