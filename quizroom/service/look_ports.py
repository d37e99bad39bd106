"""What second looks need from storage."""

from collections.abc import Iterable, Sequence
from datetime import datetime
from typing import Protocol

from quizroom.second_look.asked import AskedLook, GivenAnswer, LookSet, Wishes


class SeatOfPlayer(Protocol):
    """A seat that belongs to a player's history."""

    @property
    def room(self) -> str:
        """The room's id."""

    @property
    def player(self) -> str:
        """The player's id within that room."""


class SeatsOfPlayers(Protocol):
    """Who knows which seats a player has had."""

    def seats_of(self, player: str) -> Sequence[SeatOfPlayer]:
        """All seats of a player, in any order."""


class LookStore(Protocol):
    """Looks, their answers, sets of practice and wishes, each of one player. Writes may raise `NotStored`.

    Who is erased as a player is erased here too: that is the business of `PlayerStore`.
    """

    def add_looks(self, looks: Sequence[AskedLook]) -> None:
        """Keep looks durably; those whose id is known stay as they were."""

    def looks(self, player: str, ids: Iterable[str]) -> dict[str, AskedLook]:
        """Those of the looks that are this player's, by id."""

    def looks_of_set(self, player: str, set_id: str) -> tuple[AskedLook, ...]:
        """The looks of a set, in order."""

    def add_answers(self, player: str, answers: Sequence[GivenAnswer]) -> None:
        """Keep the first answer to each look that is this player's; others are left out."""

    def answers_of(self, player: str) -> dict[str, GivenAnswer]:
        """All answers of a player, by look."""

    def add_set(self, made: LookSet, looks: Sequence[AskedLook]) -> None:
        """Keep a set with its looks in one transaction; a known set stays as it was."""

    def find_set(self, player: str, set_id: str) -> LookSet | None:
        """A set of this player."""

    def sets_since(self, player: str, since: datetime) -> int:
        """How many sets the player has made from a time on."""

    def wishes(self, player: str) -> Wishes | None:
        """The player's wishes, if they were ever told."""

    def set_wishes(self, player: str, wishes: Wishes) -> None:
        """Keep the wishes in place of those before."""

    def all_looks(self, player: str) -> tuple[AskedLook, ...]:
        """Everything that was asked of a player, oldest first: for the export."""
