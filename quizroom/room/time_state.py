"""Time factors: how much longer than the rest a single player may answer. Known to host and player alone."""

from dataclasses import dataclass
from typing import Literal, get_args

FactorPercent = Literal[100, 150, 200]
"""A time factor in percent: 1, 1.5 or 2."""
FACTORS: tuple[FactorPercent, ...] = get_args(FactorPercent)


@dataclass(frozen=True, slots=True, kw_only=True)
class TimeLink:
    """What a private link is worth, and who has used it; it serves one seat."""

    factor_percent: FactorPercent
    player: str = ""
