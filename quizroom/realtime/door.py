"""How much may be said, and how often door codes may be guessed: credits that refill with time.

Never counted by address: a whole class shares one. A code is one of 759 375 (five of fifteen letters), so at
five wrong ones a second a room with a two-hour review is found by guessing with a chance of one in twenty.
"""

from dataclasses import dataclass

MOST_CREDITS = 40.0
"""A player may say so many things at once: a reconnect replays the outbox and probes the clock."""
CREDITS_A_SECOND = 10.0


@dataclass(slots=True)
class Credits:
    """What a connection has left to say; `at` in seconds of any steady clock."""

    left: float
    at: float


def full(now: float) -> Credits:
    """The credits of a new connection."""
    return Credits(left=MOST_CREDITS, at=now)


def admit(credits_left: Credits, now: float) -> bool:
    """Take one credit if there is one."""
    refilled = credits_left.left + max(0.0, now - credits_left.at) * CREDITS_A_SECOND
    credits_left.left, credits_left.at = min(MOST_CREDITS, refilled), now
    if credits_left.left < 1.0:
        return False
    credits_left.left -= 1.0
    return True


WRONG_DOOR_COSTS = 8.0
"""A connection may mistype five times at once, and then about once a second."""
MOST_WRONG_DOORS = 300.0
"""A lecture of a thousand may mistype together without anybody being kept waiting."""
WRONG_DOORS_A_SECOND = 5.0


class DoorGuesses:
    """Wrong door codes of all connections together. Once too many have come, any code must wait."""

    def __init__(self, now: float) -> None:
        """Begin with all credits; `now` in seconds of any steady clock."""
        self._credits = Credits(left=MOST_WRONG_DOORS, at=now)

    def may_try(self, now: float) -> bool:
        """Whether a door code may be tried."""
        gone = max(0.0, now - self._credits.at)
        self._credits.left = min(MOST_WRONG_DOORS, self._credits.left + gone * WRONG_DOORS_A_SECOND)
        self._credits.at = now
        return self._credits.left >= 1.0

    def was_wrong(self, guesser: Credits) -> None:
        """Somebody's code opened nothing: it costs all a little, and the guesser more."""
        self._credits.left -= 1.0
        guesser.left = max(0.0, guesser.left - WRONG_DOOR_COSTS)
