"""What a player has answered so far, computed from the logs: a strike or a ruling since then is in it."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace

from quizroom.room.folding import replay
from quizroom.service.player_ports import KnownPlayer, PlayerStore
from quizroom.service.ports import EventLog
from quizroom.service.roster_ports import RosterStore
from quizroom.views.history import PastReview, past_review


@dataclass(frozen=True, slots=True, kw_only=True)
class History:
    """Everything that is kept of a player."""

    player: KnownPlayer | None
    reviews: tuple[PastReview, ...]
    kept: Mapping[str, Sequence[Mapping[str, object]]]
    """Rows of all other tables about this player."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Histories:
    """Reads histories; `breathe` lets others go on between two reviews."""

    players: PlayerStore
    log: EventLog
    rosters: RosterStore
    breathe: Callable[[], None] = lambda: None

    def of(self, player: str) -> History:
        """Everything that is kept of a player; empty for one who is not known."""
        return History(
            player=self.players.known(player),
            reviews=tuple(self._reviews(player)),
            kept=self.players.kept_of(player),
        )

    def _reviews(self, player: str) -> list[PastReview]:
        found: list[PastReview] = []
        for seat in self.players.seats_of(player):
            # Not through the live rooms: a look at old reviews must not fill the memory with them.
            room = replay(self.log.read(seat.room))
            past = None if room is None else past_review(room, seat.player)
            if room is not None and past is not None:
                found.append(self._with_id(past, room.plan.roster))
            self.breathe()
        return found

    def _with_id(self, past: PastReview, roster: str) -> PastReview:
        """The review with the player's institutional id, as long as its roster is kept."""
        kept = self.rosters.find(roster) if past.entry else None
        entries = () if kept is None else kept.entries
        known = (one.row.id for one in entries if one.entry == past.entry)
        return replace(past, institutional_id=next(known, ""))
