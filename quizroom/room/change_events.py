"""Facts about keys that the host changed and items that players flagged. `by` is the name of the host."""

from dataclasses import dataclass
from datetime import datetime


@dataclass(frozen=True, slots=True, kw_only=True)
class ItemRekeyed:
    """Another key counts for the item of this round, in place of the dealt one and of any before."""

    round: int
    key: tuple[str, ...]
    terms: tuple[str, ...]
    reason: str
    by: str
    at: datetime


@dataclass(frozen=True, slots=True, kw_only=True)
class KeyRestored:
    """The key as dealt counts again."""

    round: int
    by: str
    at: datetime


@dataclass(frozen=True, slots=True, kw_only=True)
class ItemFlagged:
    """To a player an answer of this round looks wrong; `text` says why, or nothing."""

    player: str
    round: int
    text: str
    at: datetime
    asked: str = ""
    """The question of a second look, where the fact of the round was asked there in other words."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FlagTakenBack:
    """It does so no more."""

    player: str
    round: int
    at: datetime


@dataclass(frozen=True, slots=True, kw_only=True)
class FlagsSettled:
    """The host has dealt with the flags of a round so far, or takes that back."""

    round: int
    settled: bool
    by: str
    at: datetime


ChangeEvent = ItemRekeyed | KeyRestored | ItemFlagged | FlagTakenBack | FlagsSettled
