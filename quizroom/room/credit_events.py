"""Facts about who players are on a class roster: opaque ids of entries, never names or institutional ids."""

from dataclasses import dataclass
from datetime import datetime


@dataclass(frozen=True, slots=True, kw_only=True)
class EntryClaimed:
    """A player has claimed this entry of the review's roster."""

    player: str
    entry: str
    at: datetime


@dataclass(frozen=True, slots=True, kw_only=True)
class ClaimMissed:
    """A player has given an id that is not on the roster; `order` tells repeats."""

    player: str
    order: str
    at: datetime


@dataclass(frozen=True, slots=True, kw_only=True)
class EntryAssigned:
    """The host has said whose seat it is; nobody's if `entry` is empty. The player may try anew."""

    player: str
    entry: str
    at: datetime
    by: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class RosterSet:
    """From now on the review is for credit by this roster, or by none if it is empty; no claim stands."""

    roster: str
    at: datetime


CreditEvent = EntryClaimed | ClaimMissed | EntryAssigned | RosterSet
"""What is known of the players of a review for credit."""
