"""Class rosters of hosts: the one place where names and institutional ids are kept. Storage fills this in."""

import unicodedata
from dataclasses import dataclass
from datetime import datetime
from typing import Protocol


@dataclass(frozen=True, slots=True, kw_only=True)
class RosterRow:
    """Somebody as the institution lists them; `id` is text, its leading zeros belong to it."""

    id: str
    name: str
    section: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class RosterEntry:
    """A row with the opaque id by which reviews refer to it, so that no log holds a name."""

    entry: str
    row: RosterRow


@dataclass(frozen=True, slots=True, kw_only=True)
class Roster:
    """A roster of a host; `host` is whose, entries are in the order of the file."""

    id: str
    host: str
    name: str
    created_at: datetime
    changed_at: datetime
    entries: tuple[RosterEntry, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class RosterLine:
    """A roster in the list of its host."""

    id: str
    name: str
    people: int
    created_at: datetime
    changed_at: datetime


class RosterStore(Protocol):
    """Keeps rosters. Every change may raise `NotStored`."""

    def keep(self, roster: Roster) -> None:
        """Keep a roster with its entries, in place of what was kept under its id."""

    def rosters_of(self, host: str) -> tuple[RosterLine, ...]:
        """The rosters of a host by name, then by id."""

    def find(self, roster: str) -> Roster | None:
        """A roster with its entries, if it is there."""

    def entry_of(self, roster: str, institutional_id: str) -> str | None:
        """The opaque id of whoever has this institutional id (as `folded_id` sees it), if anybody has."""

    def erase(self, roster: str) -> None:
        """Erase a roster with its entries; an unknown one changes nothing."""

    def unused_since(self, before: datetime) -> tuple[str, ...]:
        """Rosters that were last changed before that and to which no kept review refers."""


def folded_id(institutional_id: str) -> str:
    """What makes two institutional ids the same: case, spaces and forms of letters matter not; zeros do."""
    return "".join(unicodedata.normalize("NFKC", institutional_id).casefold().split())
