"""More time: how much longer than the rest a single player may answer. Known to host and player alone."""

from dataclasses import dataclass
from typing import Literal, get_args

FactorPercent = Literal[100, 150, 200]
"""A time factor in percent: 1, 1.5 or 2."""
FACTORS: tuple[FactorPercent, ...] = get_args(FactorPercent)

SECOND_MS = 1000
ALWAYS_PERCENT = 1000
"""A round for whoever takes more time always, in percent. Source: WCAG 2.2, 2.2.1, "Adjust": ten times."""
MOST_TIMES = 20
"""How often more time may be taken in a round. Source: WCAG 2.2, 2.2.1, "Extend", asks for ten at least."""
LEAST_TAKEN_MS = 30_000
"""What is taken in a very short round (common practice, no source): enough to be warned in and take more."""
LATE_MS = 20_000
"""How late more time may be taken while the result is held. Source: WCAG 2.2, 2.2.1, "Extend": 20 seconds."""


@dataclass(frozen=True, slots=True, kw_only=True)
class TimeLink:
    """What a private link is worth, and who has used it; it serves one seat."""

    factor_percent: FactorPercent
    player: str = ""


def own_limit_ms(limit_ms: int, percent: int) -> int:
    """The length of a round for a player, in whole seconds, rounded up: 45 s at 1.5 are 68 s.

    Source of the example: the trade's timing rule (reading time, 10 s, 3 s an option; times 1.5 or 2).
    """
    return -(-limit_ms * percent // (100 * SECOND_MS)) * SECOND_MS


def taken_ms(limit_ms: int) -> int:
    """What taking more time once adds to a round of this length: the same again, in whole seconds."""
    return max(own_limit_ms(limit_ms, 100), LEAST_TAKEN_MS)
