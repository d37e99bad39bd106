"""A review without a host: by which rules it runs by itself, and where it stands."""

from dataclasses import dataclass
from datetime import datetime

LEAST_GROUP = 2
"""A group begins with so many; a single player may begin too, but has to say so."""


@dataclass(frozen=True, slots=True, kw_only=True)
class GroupRules:
    """What whoever opened the room chose."""

    reading_s: int | None
    """How long a record stays at most, in seconds; None: until everybody present is ready."""
    hours: int
    """So long after it was laid out the room ends by itself."""


@dataclass(frozen=True, slots=True, kw_only=True)
class GroupRun:
    """Who is there, who is ready for the next step, and whether somebody has asked for a pause."""

    away: frozenset[str] = frozenset()
    """Players whose line is gone: they keep their seats and are not waited for."""
    ready: frozenset[str] = frozenset()
    """Who is ready for the round that comes next; emptied when it opens."""
    alone: bool = False
    """Whether a single player has said that nobody else is to be waited for."""
    paused: bool = False
    reading_until: datetime | None = None
    """When the record gives way by itself; None in a pause, and where it stays until all are ready."""
    reading_left_ms: int | None = None
    """What was left of the reading time when the pause began."""
    empty_since: datetime | None = None
    """Since when nobody is there; None as long as somebody is."""
