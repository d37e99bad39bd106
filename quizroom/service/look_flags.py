"""Flags of second looks: they go to the host of the review in which the fact was asked."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from quizroom.room.change_commands import FlagItem, UnflagItem
from quizroom.second_look.asked import AskedLook
from quizroom.second_look.sighting import sightings_of
from quizroom.service.mind import round_origin
from quizroom.service.rooms import Rooms, UnknownRoom
from quizroom.service.seat_history import PlayedRound, SeatHistory
from quizroom.service.second_look import SecondLooks


class NoReader(Exception):
    """No host would read this flag: the item came from no review, or its review is not kept any more."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Flagged:
    """The round of a review at which the flags of a look gather."""

    history: SeatHistory
    played: PlayedRound


@dataclass(frozen=True, slots=True, kw_only=True)
class LookFlags:
    """The service: puts flags up and takes them back in the rooms where the items were asked."""

    second_looks: SecondLooks
    rooms: Rooms

    def put(self, player: str, look_id: str, text: str) -> None:
        """Flag the item of a look, with a few words or none.

        Raises:
            NoReader: nobody would read it.
            Refused: the room takes no such flag.
            NotStored: nothing was kept.
        """
        look, place = self._place(player, look_id)
        asked = "" if look.item.stem == place.played.item.stem else look.item.stem
        order = FlagItem(player=place.history.seat, round=place.played.number, text=text, asked=asked)
        self._ordered(place, order)

    def take_back(self, player: str, look_id: str) -> None:
        """Take the flag back; raises as `put` does."""
        _, place = self._place(player, look_id)
        self._ordered(place, UnflagItem(player=place.history.seat, round=place.played.number))

    def _place(self, player: str, look_id: str) -> tuple[AskedLook, Flagged]:
        look = self.second_looks.store.looks(player, (look_id,)).get(look_id)
        seats = self.second_looks.players.seats_of(player)
        places = {} if look is None else flag_places(self.second_looks.histories.of(seats), (look,))
        if look is None or look_id not in places:
            raise NoReader
        return look, places[look_id]

    def _ordered(self, place: Flagged, order: FlagItem | UnflagItem) -> None:
        try:
            self.rooms.handle(place.history.room, order)
        except UnknownRoom as gone:
            raise NoReader from gone


def flag_places(histories: Iterable[SeatHistory], looks: Iterable[AskedLook]) -> Mapping[str, Flagged]:
    """By the id of a look the round at which its flags gather; looks that no host would hear of are left out.

    What was missed in a round belongs to that round, what comes back to the last round that asked the fact.
    """
    origins: dict[str, Flagged] = {}
    facts: dict[str, Flagged] = {}
    for history in sorted(histories, key=lambda one: one.rounds[-1].at.timestamp() if one.rounds else 0):
        for played in history.rounds if history.has_host else ():
            place = Flagged(history=history, played=played)
            origins[round_origin(history, played)] = place
            for sighting in sightings_of(played.item, played.said, at=played.at, origin=""):
                facts[f"plan {sighting.fact}"] = place
    known = facts | origins
    return {look.id: known[look.origin] for look in looks if look.origin in known}
