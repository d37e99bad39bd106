"""Who was there in which rounds. Handles only: a handle is what its owner chose to be called here."""

from dataclasses import dataclass
from typing import Literal

from quizroom.room.state import Player, Room, Round

Presence = Literal["answered", "silent", "before"]
"""Handed something in; sat there without; had not come yet."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Attendance:
    """One player over the closed rounds of a review, in their order."""

    handle: str
    rounds: tuple[Presence, ...]

    @property
    def answered(self) -> int:
        """In how many rounds something was handed in."""
        return self.rounds.count("answered")


def attendance_of(room: Room) -> tuple[Attendance, ...]:
    """Everybody who sits in the room, by handle; struck rounds count, for people were there."""
    closed = [current for current in room.rounds if current.closed_at is not None]
    found = (
        Attendance(handle=player.handle, rounds=tuple(_presence(player, current) for current in closed))
        for player in room.players.values()
    )
    return tuple(sorted(found, key=lambda one: (one.handle.casefold(), one.handle)))


def _presence(player: Player, current: Round) -> Presence:
    if player.id in current.answers:
        return "answered"
    return "before" if current.number < player.from_round else "silent"
