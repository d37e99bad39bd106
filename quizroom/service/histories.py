"""What a player has answered so far, computed from the logs: a strike or a ruling since then is in it."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass

from quizroom.room.folding import replay
from quizroom.service.player_ports import KnownPlayer, PlayerStore
from quizroom.service.ports import EventLog
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
            if past is not None:
                found.append(past)
            self.breathe()
        return found
