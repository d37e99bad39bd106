"""What hosts do with their rosters."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

from quizroom.service.ports import Clock
from quizroom.service.roster_ports import (
    Roster,
    RosterEntry,
    RosterLine,
    RosterRow,
    RosterStore,
    folded_id,
)


class UnknownRoster(Exception):
    """The host has no roster with this id."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Rosters:
    """Keeps rosters, each for its host alone."""

    store: RosterStore
    clock: Clock
    new_id: Callable[[], str]

    def add(self, host: str, name: str, rows: Sequence[RosterRow]) -> Roster:
        """Keep a new roster. Raises `NotStored`."""
        now = self.clock.now()
        entries = tuple(RosterEntry(entry=self.new_id(), row=row) for row in rows)
        made = Roster(id=self.new_id(), host=host, name=name, created_at=now, changed_at=now, entries=entries)
        self.store.keep(made)
        return made

    def change(self, roster: Roster, name: str, rows: Sequence[RosterRow]) -> Roster:
        """Put other rows in place of those of a roster. Raises `NotStored`.

        Whoever was on it before, by the institutional id, keeps the opaque id, and with it every claim.
        """
        known = {folded_id(entry.row.id): entry.entry for entry in roster.entries}
        entries = tuple(
            RosterEntry(entry=known.get(folded_id(row.id)) or self.new_id(), row=row) for row in rows
        )
        changed = replace(roster, name=name, changed_at=self.clock.now(), entries=entries)
        self.store.keep(changed)
        return changed

    def of(self, host: str) -> tuple[RosterLine, ...]:
        """The rosters of a host, without anybody's name."""
        return self.store.rosters_of(host)

    def own(self, host: str, roster: str) -> Roster | None:
        """A roster with its entries, if it is this host's."""
        found = self.store.find(roster) if host and roster else None
        return found if found is not None and found.host == host else None
