"""Class rosters in memory, for tests and for trying things out."""

from collections.abc import Callable, Collection
from datetime import datetime

from quizroom.service.roster_ports import Roster, RosterLine, folded_id


class MemoryRosters:
    """`service.roster_ports.RosterStore` in a dictionary."""

    def __init__(self, reviews_of: Callable[[str], Collection[str]]) -> None:
        """`reviews_of` gives the kept reviews that refer to a roster."""
        self._reviews_of = reviews_of
        self._rosters: dict[str, Roster] = {}

    def keep(self, roster: Roster) -> None:
        """Keep a roster in place of what was kept under its id."""
        self._rosters[roster.id] = roster

    def rosters_of(self, host: str) -> tuple[RosterLine, ...]:
        """The rosters of a host by name, then by id."""
        lines = (
            RosterLine(
                id=one.id,
                name=one.name,
                people=len(one.entries),
                created_at=one.created_at,
                changed_at=one.changed_at,
            )
            for one in self._rosters.values()
            if one.host == host
        )
        return tuple(sorted(lines, key=lambda line: (line.name.casefold(), line.id)))

    def find(self, roster: str) -> Roster | None:
        """A roster with its entries."""
        return self._rosters.get(roster)

    def entry_of(self, roster: str, institutional_id: str) -> str | None:
        """The opaque id of whoever has this institutional id."""
        known = self._rosters.get(roster)
        entries = () if known is None else known.entries
        wanted = folded_id(institutional_id)
        return next((one.entry for one in entries if folded_id(one.row.id) == wanted), None)

    def erase(self, roster: str) -> None:
        """Erase a roster."""
        self._rosters.pop(roster, None)

    def unused_since(self, before: datetime) -> tuple[str, ...]:
        """Rosters last changed before that, to which no kept review refers."""
        return tuple(
            sorted(
                one.id
                for one in self._rosters.values()
                if one.changed_at < before and not self._reviews_of(one.id)
            )
        )
