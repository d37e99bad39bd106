"""Orders about who players are on a class roster. Entries are opaque ids: no name ever comes into a room."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class ClaimEntry:
    """A player says which entry of the roster is theirs."""

    player: str
    entry: str


@dataclass(frozen=True, slots=True, kw_only=True)
class MissClaim:
    """A player has given an id that is not on the roster; what it was is not told.

    `order` makes a repeat harmless.
    """

    player: str
    order: str


@dataclass(frozen=True, slots=True, kw_only=True)
class AssignEntry:
    """The host says whose seat it is, whoever claimed what before; with an empty entry, nobody's.

    `by` is which host.
    """

    player: str
    entry: str
    by: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class SetRoster:
    """The host lets a review be for credit by this roster, or for none if it is empty.

    Only until the first round opens: nobody may have played for practice what counts afterwards.
    """

    roster: str


CreditCommand = ClaimEntry | MissClaim | AssignEntry | SetRoster
"""Who players are on the roster of a review for credit."""
