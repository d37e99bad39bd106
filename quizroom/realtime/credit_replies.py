"""Players who say who they are on a class roster, and what comes of it."""

from dataclasses import dataclass, replace
from datetime import datetime

from quizroom.protocol import seat_messages
from quizroom.protocol.credit_messages import ClaimIdentity
from quizroom.protocol.replies import Reply
from quizroom.realtime.door import Guesses
from quizroom.realtime.replies import refused
from quizroom.realtime.seat_replies import SeatReplies
from quizroom.realtime.seats import Seat
from quizroom.room.credit_commands import ClaimEntry, MissClaim
from quizroom.room.refusals import Refused
from quizroom.service.roster_ports import RosterStore


@dataclass(frozen=True, slots=True, kw_only=True)
class CreditReplies:
    """Answers claims. The roster stays here: a seat learns whether its own id is on it and nothing else.

    `guesses` slows down whoever tries ids from one new seat after the other.
    """

    seat_replies: SeatReplies
    rosters: RosterStore
    guesses: Guesses

    def answer(self, seat: Seat, message: ClaimIdentity) -> Reply:
        """Carry out a claim. Refusals of the room itself are raised."""
        now = self.seat_replies.clock.now()
        if seat.role != "seat":
            return refused(message.id, "no_seat", now)
        rooms = self.seat_replies.rooms
        roster = rooms.room(seat.room).plan.roster
        entry = self.rosters.entry_of(roster, message.institutional_id) if roster else ""
        if entry is None:
            return self._missed(seat, message, now)
        if not self.guesses.may_try(now.timestamp()):
            return refused(message.id, "slow_down", now)
        rooms.handle(seat.room, ClaimEntry(player=seat.player, entry=entry))
        return self._views(seat, message)

    def _missed(self, seat: Seat, message: ClaimIdentity, now: datetime) -> Reply:
        if not self.guesses.was_wrong(seat.credits, now.timestamp()):
            return refused(message.id, "slow_down", now)
        try:
            self.seat_replies.rooms.handle(seat.room, MissClaim(player=seat.player, order=message.id))
        except Refused:
            self.guesses.give_back(now.timestamp())
            raise
        # With the views: they say how many tries are left.
        shown = self._views(seat, message)
        return replace(refused(message.id, "unknown_id", now), public=shown.public, own=shown.own)

    def _views(self, seat: Seat, message: ClaimIdentity) -> Reply:
        return self.seat_replies.answer(seat, seat_messages.ShowView(id=message.id, type="show_view"))
