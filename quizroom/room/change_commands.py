"""Orders to key an item anew, and about flags. `by` is the name of the host who gives them."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class RekeyItem:
    """Key another variant of an opened item: letters as its key holds them, or terms that may be typed.

    The dealt key again, or no letters and no terms, takes the change back.
    """

    round: int
    key: tuple[str, ...] = ()
    terms: tuple[str, ...] = ()
    reason: str = ""
    by: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class FlagItem:
    """A player says that an answer looks wrong, with a few words or none; again: with other words."""

    player: str
    round: int
    text: str = ""
    asked: str = ""
    """The question of a second look, where the fact of the round was asked there in other words."""


@dataclass(frozen=True, slots=True, kw_only=True)
class UnflagItem:
    """A player takes the flag back."""

    player: str
    round: int


@dataclass(frozen=True, slots=True, kw_only=True)
class SettleFlags:
    """The host has dealt with all flags of a round so far, or takes that back."""

    round: int
    settled: bool
    by: str = ""


ChangeCommand = RekeyItem | FlagItem | UnflagItem | SettleFlags
