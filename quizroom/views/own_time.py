"""Clocks that only one player and the host see."""

from quizroom.room.own_time import OwnClock, own_clock, times_taken
from quizroom.room.state import Player, Room
from quizroom.room.taking_time import last_taking, may_take_time
from quizroom.room.time_state import MOST_TIMES
from quizroom.views.item_model import ClockFace
from quizroom.views.moment import milliseconds
from quizroom.views.time_model import TimeToTake


def own_clock_face(room: Room, player: str) -> ClockFace | None:
    """A player's own clock of the current round; None where the clock of all is theirs too."""
    clock = own_clock(room, player)
    return None if clock is None else clock_face(clock)


def clock_face(clock: OwnClock) -> ClockFace:
    """Such a clock as it is shown."""
    return ClockFace(
        limit_ms=clock.limit_ms,
        closes_at=None if clock.closes_at is None else milliseconds(clock.closes_at),
        left_ms=clock.left_ms,
        paused=clock.paused,
    )


def time_to_take(room: Room, player: Player) -> TimeToTake | None:
    """How a player stands with more time that they may take; None where that is the host's alone."""
    if not may_take_time(room.plan):
        return None
    last = last_taking(room, player.id)
    return TimeToTake(
        always=player.always_since is not None,
        taken=times_taken(room.rounds[-1], player.id) if room.rounds else 0,
        most=MOST_TIMES,
        until=None if last is None else milliseconds(last),
    )
