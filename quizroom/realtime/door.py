"""How much one connection may say: credits that refill with time. Never counted by address."""

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
