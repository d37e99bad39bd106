"""Clocks that only one player and the host see."""

from quizroom.room.own_time import own_clock
from quizroom.room.state import Room
from quizroom.views.model import ClockFace
from quizroom.views.moment import milliseconds


def own_clock_face(room: Room, player: str) -> ClockFace | None:
    """A player's own clock of the current round; None where the clock of all is theirs too."""
    clock = own_clock(room, player)
    if clock is None:
        return None
    return ClockFace(
        limit_ms=clock.limit_ms,
        closes_at=None if clock.closes_at is None else milliseconds(clock.closes_at),
        left_ms=clock.left_ms,
        paused=clock.paused,
    )
