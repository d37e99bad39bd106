"""How much may be said, and how often door codes may be guessed: credits that refill with time.

Never counted by address: a whole class shares one. A code is one of 759 375 (five of fifteen letters), so at
five wrong ones a second a room with a two-hour review is found by guessing with a chance of one in twenty.
"""

from dataclasses import dataclass, field

from quizroom.service.tries import Limit, OwnTries, Tries

MOST_CREDITS = 40.0
"""A player may say so many things at once: a reconnect replays the outbox and probes the clock."""
CREDITS_A_SECOND = 10.0


@dataclass(slots=True, weakref_slot=True)
class Credits:
    """What a connection, or all of a seat, have left to say; `at` in seconds of any steady clock."""

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
WRONG_DOORS = Limit(name="doors", most=300.0, a_second=5.0)
"""A lecture of a thousand may mistype together without anybody being kept waiting."""
UNKNOWN_IDS = Limit(name="ids", most=300.0, a_second=5.0)
"""Likewise for ids that are on no roster."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Guesses:
    """Wrong codes of all connections together. Once too many have come, any code must wait."""

    limit: Limit
    tries: Tries = field(default_factory=OwnTries)

    def may_try(self, now: float) -> bool:
        """Whether a right code may come in; `now` in seconds since the epoch."""
        return self.tries.are_left(self.limit, now)

    def was_wrong(self, guesser: Credits, now: float) -> bool:
        """Somebody's code opened nothing: it costs all a little, and the guesser more.

        False if too many have guessed, and then nobody may be told that it was wrong.
        """
        if not self.tries.take((self.limit,), now):
            return False
        guesser.left = max(0.0, guesser.left - WRONG_DOOR_COSTS)
        return True

    def give_back(self, now: float) -> None:
        """It was no guess after all."""
        self.tries.give_back(self.limit, now)
