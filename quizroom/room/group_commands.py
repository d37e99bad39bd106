"""Orders of players to a review without a host, and what is due in it."""

from dataclasses import dataclass
from typing import Literal

Step = Literal["open_round", "close_round", "show_record", "end_review"]
"""What a review without a host does next, by itself."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SayReady:
    """A player is ready for the round after `round`; `alone` begins even with nobody else there."""

    player: str
    round: int
    alone: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class AskPause:
    """A player asks for a pause in round `round`, while it is open or its record is shown."""

    player: str
    round: int


@dataclass(frozen=True, slots=True, kw_only=True)
class GoOn:
    """A player ends the pause, whoever asked for it."""

    player: str
    round: int


@dataclass(frozen=True, slots=True, kw_only=True)
class LeaveSeat:
    """The last line of a player has been gone for a while."""

    player: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ReturnToSeat:
    """A player who was away is on the line again."""

    player: str


@dataclass(frozen=True, slots=True, kw_only=True)
class SendOut:
    """Whoever opened the room sends another player out."""

    by: str
    player: str


@dataclass(frozen=True, slots=True, kw_only=True)
class RenameSelf:
    """A player takes another handle: there is no host who could give one."""

    player: str
    handle: str


@dataclass(frozen=True, slots=True, kw_only=True)
class MoveOn:
    """Take the step that is due in round `round`. If it is not due any more, nothing happens.

    So any number of processes may watch the same room.
    """

    step: Step
    round: int


GroupCommand = SayReady | AskPause | GoOn | LeaveSeat | ReturnToSeat | SendOut | RenameSelf | MoveOn
