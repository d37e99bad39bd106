"""Who is on which connection."""

from collections.abc import Collection
from dataclasses import dataclass, replace
from typing import Literal

from quizroom.realtime.door import Credits, full

Role = Literal["nobody", "seat", "wall", "desk"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Seat:
    """A connection: its role in which room, as which player; `host` if the cookie proved one."""

    sid: str
    credits: Credits
    host: str = ""
    role: Role = "nobody"
    room: str = ""
    player: str = ""


class Seats:
    """All connections of this process. Nothing here is taken from a message."""

    def __init__(self) -> None:
        """Begin with nobody."""
        self._seats: dict[str, Seat] = {}

    def connect(self, sid: str, *, host: str, now: float) -> None:
        """A new connection, with the host that its cookie proved, or none."""
        self._seats[sid] = Seat(sid=sid, host=host, credits=full(now))

    def disconnect(self, sid: str) -> None:
        """The connection is gone."""
        self._seats.pop(sid, None)

    def seat_of(self, sid: str) -> Seat | None:
        """The seat of a connection."""
        return self._seats.get(sid)

    def take(self, sid: str, *, role: Role, room: str, player: str = "") -> None:
        """From now on this connection is in this role."""
        if sid in self._seats:
            self._seats[sid] = replace(self._seats[sid], role=role, room=room, player=player)

    def all(self) -> tuple[str, ...]:
        """Every connection."""
        return tuple(self._seats)

    def rooms(self) -> frozenset[str]:
        """All rooms that some connection is in."""
        return frozenset(seat.room for seat in self._seats.values() if seat.room)

    def players_in(self, rooms: Collection[str]) -> dict[str, set[str]]:
        """The players of each of these rooms with at least one line to this process, found in one pass."""
        found: dict[str, set[str]] = {room: set() for room in rooms}
        for seat in self._seats.values():
            if seat.role == "seat" and seat.room in found:
                found[seat.room].add(seat.player)
        return found

    def in_room(self, room: str, role: Role) -> tuple[Seat, ...]:
        """All connections of a room in a role."""
        return tuple(seat for seat in self._seats.values() if seat.room == room and seat.role == role)
