"""How fast a rehearsal goes."""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType


@dataclass(frozen=True, slots=True, kw_only=True)
class Pace:
    """Seconds: to gather, typically to think, and to look at a closed round and at its record."""

    gathering_s: float
    thinking_s: float
    closed_s: float
    record_s: float


PACES: Mapping[str, Pace] = MappingProxyType(
    {
        "class": Pace(gathering_s=20.0, thinking_s=9.0, closed_s=6.0, record_s=14.0),
        "quick": Pace(gathering_s=1.0, thinking_s=0.7, closed_s=0.5, record_s=0.7),
    }
)
"""As in a class, to be looked at; or quick, to be over soon."""
