"""Study groups: rooms that anybody may open, within limits, and that run by themselves."""

from collections.abc import Callable
from dataclasses import dataclass

from quizroom.room.commands import EnterSeat
from quizroom.room.handles import is_good_handle, tidy_handle
from quizroom.room.refusals import Refused
from quizroom.room.seating import player_of_key
from quizroom.room.state import Plan, Room
from quizroom.service.ports import EventLog
from quizroom.service.reviews import Reviews, room_of_order
from quizroom.service.rooms import Rooms

NO_HOST = ""
"""The host of rooms that nobody leads."""


class GroupsOff(Exception):
    """This server lets nobody open a group."""


class TooManyGroups(Exception):
    """As many groups as the server allows are under way."""


@dataclass(frozen=True, slots=True, kw_only=True)
class GroupLimits:
    """What the server's settings allow."""

    on: bool
    size: int
    """Most players in a room."""
    most: int
    """Most groups under way at once."""
    hours: int
    """How long a room lives."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Groups:
    """Opens rooms for study groups."""

    reviews: Reviews
    rooms: Rooms
    log: EventLog
    limits: GroupLimits
    new_id: Callable[[], str]

    def open(self, plan: Plan, *, handle: str, key_hash: str, order: str, owner: str = "") -> Room:
        """Deal the plan's items, open the door, and seat whoever asked.

        The same order again carries on where the first try broke off, and finds the same room.

        Args:
            plan: what the review is made of; with `group` set.
            handle: of whoever opens it.
            key_hash: SHA-256 of their seat's key, in hex.
            order: id that their browser gave to this order alone.
            owner: to whose history the seat belongs, if to any.

        Raises:
            GroupsOff, TooManyGroups: the server does not allow it, or not now.
            UnknownCourse, CannotDeal, NoDoorFree: as for reviews with a host.
            Refused: the handle is no good.
        """
        room = self.rooms.find(room_of_order(key_hash, order)) or self._laid_out(
            plan, handle=handle, key_hash=key_hash, order=order
        )
        if not room.door_code:
            room = self.reviews.open_door(room)
        if player_of_key(room, key_hash) is None:
            seat = EnterSeat(player=self.new_id(), handle=handle, key_hash=key_hash, owner=owner)
            room = self.rooms.handle(room.id, seat)
        return room

    def _laid_out(self, plan: Plan, *, handle: str, key_hash: str, order: str) -> Room:
        if not self.limits.on:
            raise GroupsOff
        if self.under_way() >= self.limits.most:
            raise TooManyGroups
        # Looked at before there is a room, lest one be left behind into which nobody comes.
        if not is_good_handle(tidy_handle(handle)):
            raise Refused("bad_handle")
        return self.reviews.lay_out(room_of_order(key_hash, order), plan, host=NO_HOST)

    def under_way(self) -> int:
        """How many groups have not ended, whichever process serves them."""
        rooms = (self.rooms.room(room) for room in self.log.unfinished_rooms())
        return sum(room.run is not None for room in rooms)
