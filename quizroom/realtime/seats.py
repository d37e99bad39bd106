"""Who is on which connection."""

from collections.abc import Collection
from dataclasses import dataclass, replace
from typing import Literal
from weakref import WeakValueDictionary

from quizroom.realtime.door import Credits, full
from quizroom.service.host_ports import Host

Role = Literal["nobody", "seat", "wall", "desk"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Seat:
    """A connection: its role in which room, as which player; `who` if the cookie proved a host."""

    sid: str
    credits: Credits
    session: str = ""
    """The session of the cookie, by which the host is looked up anew at each of their messages."""
    who: Host | None = None
    role: Role = "nobody"
    room: str = ""
    player: str = ""

    @property
    def host(self) -> str:
        """The owner whose reviews this host leads; empty if it is no host."""
        return self.who.leads if self.who else ""

    @property
    def host_name(self) -> str:
        """What the host is called where it is said who did something; empty if it is no host."""
        return self.who.name if self.who else ""


class Seats:
    """All connections of this process. Nothing here is taken from a message."""

    def __init__(self) -> None:
        """Begin with nobody."""
        self._seats: dict[str, Seat] = {}
        self._purses: WeakValueDictionary[tuple[str, str], Credits] = WeakValueDictionary()

    def connect(self, sid: str, *, session: str, now: float) -> None:
        """A new connection, with the session that its cookie names, or none."""
        self._seats[sid] = Seat(sid=sid, session=session, credits=full(now))

    def disconnect(self, sid: str) -> None:
        """The connection is gone."""
        self._seats.pop(sid, None)

    def seat_of(self, sid: str) -> Seat | None:
        """The seat of a connection."""
        return self._seats.get(sid)

    def take(self, sid: str, *, role: Role, room: str, player: str = "", who: Host | None = None) -> None:
        """From now on this connection is in this role; at a desk, `who` it is.

        All connections of one seat have the credits of one: nobody says more by opening more of them.
        """
        if sid not in self._seats:
            return
        known = self._seats[sid]
        purse = self._purses.setdefault((room, player), known.credits) if role == "seat" else known.credits
        self._seats[sid] = replace(known, role=role, room=room, player=player, who=who, credits=purse)

    def all(self) -> tuple[str, ...]:
        """Every connection."""
        return tuple(self._seats)

    def desks(self) -> tuple[Seat, ...]:
        """Every connection with a desk."""
        return tuple(seat for seat in self._seats.values() if seat.role == "desk")

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
