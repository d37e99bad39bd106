"""Second looks in memory, under the same contract."""

from collections.abc import Iterable, Sequence
from datetime import datetime

from quizroom.second_look.asked import AskedLook, GivenAnswer, LookSet, Wishes


class MemoryLookStore:
    """`service.look_ports.LookStore` in dictionaries."""

    def __init__(self) -> None:
        """Begin with nothing."""
        self._looks: dict[str, AskedLook] = {}
        self._answers: dict[str, GivenAnswer] = {}
        self._sets: dict[tuple[str, str], LookSet] = {}
        self._wishes: dict[str, Wishes] = {}

    def add_looks(self, looks: Sequence[AskedLook]) -> None:
        """Keep looks; those whose id is known stay."""
        for look in looks:
            self._looks.setdefault(look.id, look)

    def looks(self, player: str, ids: Iterable[str]) -> dict[str, AskedLook]:
        """Those of the looks that are this player's."""
        return {one: self._looks[one] for one in ids if one in self._looks and self._owns(player, one)}

    def looks_of_set(self, player: str, set_id: str) -> tuple[AskedLook, ...]:
        """The looks of a set, in order."""
        mine = (look for look in self.all_looks(player) if look.set == set_id)
        return tuple(sorted(mine, key=lambda look: (look.place, look.id)))

    def add_answers(self, player: str, answers: Sequence[GivenAnswer]) -> None:
        """Keep the first answer to each look of this player."""
        for answer in answers:
            if answer.look in self._looks and self._owns(player, answer.look):
                self._answers.setdefault(answer.look, answer)

    def answers_of(self, player: str) -> dict[str, GivenAnswer]:
        """All answers of a player, by look."""
        return {look: answer for look, answer in self._answers.items() if self._owns(player, look)}

    def add_set(self, made: LookSet, looks: Sequence[AskedLook]) -> None:
        """Keep a set with its looks; a known set stays."""
        if (made.player, made.id) not in self._sets:
            self._sets[made.player, made.id] = made
            self.add_looks(looks)

    def find_set(self, player: str, set_id: str) -> LookSet | None:
        """A set of this player."""
        return self._sets.get((player, set_id))

    def sets_since(self, player: str, since: datetime) -> int:
        """How many sets the player has made from a time on."""
        return sum(made.player == player and made.made_at >= since for made in self._sets.values())

    def wishes(self, player: str) -> Wishes | None:
        """The player's wishes."""
        return self._wishes.get(player)

    def set_wishes(self, player: str, wishes: Wishes) -> None:
        """Keep the wishes."""
        self._wishes[player] = wishes

    def all_looks(self, player: str) -> tuple[AskedLook, ...]:
        """Everything that was asked of a player, oldest first."""
        mine = (look for look in self._looks.values() if look.player == player)
        return tuple(sorted(mine, key=lambda look: (look.made_at, look.place, look.id)))

    def _owns(self, player: str, look: str) -> bool:
        return self._looks[look].player == player
