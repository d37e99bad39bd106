"""What players and walls say, and what comes of it."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from datetime import timedelta

from quizroom.protocol import seat_messages
from quizroom.protocol.change_messages import FlagItem, FlagMessage, UnflagItem
from quizroom.protocol.replies import Reply
from quizroom.protocol.time_messages import BringTime, TakingMessage
from quizroom.protocol.translate import answer_command, bring_command, flag_command, taking_command
from quizroom.realtime.broadcast import Broadcast, public_of
from quizroom.realtime.door import Guesses
from quizroom.realtime.lines import Lines
from quizroom.realtime.replies import done, refused
from quizroom.realtime.seats import Role, Seat, Seats
from quizroom.room.commands import Command, EnterSeat
from quizroom.room.owner_commands import LinkSeat
from quizroom.room.seating import player_of_key
from quizroom.room.state import Room
from quizroom.service.hashing import hash_of_secret
from quizroom.service.players import player_of
from quizroom.service.ports import Clock, EventLog
from quizroom.service.reviews import tidy_door_code
from quizroom.service.rooms import Rooms
from quizroom.views.desk import desk_view
from quizroom.views.own import own_view
from quizroom.views.public import public_view

SeatMessage = seat_messages.SeatMessage | FlagMessage | BringTime | TakingMessage


CODE_OUTLIVES_REVIEW = timedelta(hours=12)
"""Players may still look back the same day; later the code is as good as unknown."""


def _nothing_does(_handle: str) -> bool:
    return False


def _order(message: FlagMessage | BringTime | TakingMessage, player: str) -> Command:
    match message:
        case FlagItem() | UnflagItem():
            return flag_command(message, player)
        case BringTime():
            return bring_command(message, player)
        case _:
            return taking_command(message, player)


@dataclass(frozen=True, slots=True, kw_only=True)
class SeatReplies:
    """Answers the messages of seats and walls."""

    rooms: Rooms
    log: EventLog
    seats: Seats
    lines: Lines
    broadcast: Broadcast
    clock: Clock
    new_id: Callable[[], str]
    guesses: Guesses
    reads_rudely: Callable[[str], bool] = _nothing_does

    def answer(self, seat: Seat, message: SeatMessage) -> Reply:
        """Carry out a message. Refusals of the room itself are raised."""
        match message:
            case seat_messages.EnterSeat() | seat_messages.ResumeSeat() | seat_messages.WatchWall():
                return self._come_in(seat, message)
            case seat_messages.ProbeTime():
                return done(message.id, self.clock.now())
            case seat_messages.ShowView():
                return self._show(seat, message)
            case _ if seat.role != "seat":
                return refused(message.id, "no_seat", self.clock.now())
            case seat_messages.SubmitAnswer():
                self.rooms.handle(seat.room, answer_command(message, seat.player))
                return done(message.id, self.clock.now(), answer_round=message.round)
            case seat_messages.KeepResults():
                room = self._linked(self.rooms.room(seat.room), seat.player, message.player_key)
            case _:
                room = self.rooms.handle(seat.room, _order(message, seat.player))
        return self._views(message.id, room, seat.player)

    def _show(self, seat: Seat, message: seat_messages.ShowView) -> Reply:
        if not seat.room:
            return refused(message.id, "no_seat", self.clock.now())
        room = self.rooms.fresh(seat.room)
        shown = self._views(message.id, room, seat.player)
        if seat.role != "desk":
            return shown
        return replace(shown, desk=desk_view(room, self.broadcast.marks(room), self.clock.now()))

    def _come_in(
        self,
        seat: Seat,
        message: seat_messages.EnterSeat | seat_messages.ResumeSeat | seat_messages.WatchWall,
    ) -> Reply:
        now = self.clock.now()
        room = self._room_behind(message.door_code)
        match message:
            case seat_messages.ResumeSeat() if room is not None and self._sits_in(room, message):
                # Whoever has a seat comes back to it however many others are guessing codes.
                return self._resume(seat, message, room)
            case _ if room is None:
                told = self.guesses.was_wrong(seat.credits, now.timestamp())
                return refused(message.id, "unknown_door" if told else "slow_down", now)
            case _ if not self.guesses.may_try(now.timestamp()):
                return refused(message.id, "slow_down", now)
            case seat_messages.EnterSeat():
                return self._enter(seat, message, room.id)
            case seat_messages.ResumeSeat():
                return self._resume(seat, message, room)
            case seat_messages.WatchWall():
                return self._sit(seat, message.id, room, role="wall")

    def _room_behind(self, door_code: str) -> Room | None:
        """The room that a door code leads to; codes of reviews that ended long ago lead nowhere."""
        code = tidy_door_code(door_code)
        # A class comes in by one door: after the first its room is in memory, and need not be looked up.
        room_id = self.rooms.live_behind(code) or self.log.room_of_door(code)
        if room_id is None:
            return None
        room = self.rooms.fresh(room_id)
        over = room.finished_at is not None and self.clock.now() - room.finished_at > CODE_OUTLIVES_REVIEW
        return None if over else room

    def _sits_in(self, room: Room, message: seat_messages.ResumeSeat) -> bool:
        return player_of_key(room, hash_of_secret(message.seat_key)) is not None

    def _enter(self, seat: Seat, message: seat_messages.EnterSeat, room_id: str) -> Reply:
        if self.reads_rudely(message.handle):
            return refused(message.id, "rude_handle", self.clock.now())
        key_hash = hash_of_secret(message.seat_key)
        owner = player_of(message.player_key) if message.player_key else ""
        command = EnterSeat(player=self.new_id(), handle=message.handle, key_hash=key_hash, owner=owner)
        self.rooms.handle(room_id, command)
        # The room as it is now, not as it was after this one of many orders: its marks are known already.
        return self.sit_down(seat, message.id, self.rooms.room(room_id), key_hash)

    def _resume(self, seat: Seat, message: seat_messages.ResumeSeat, room: Room) -> Reply:
        mine = player_of_key(room, hash_of_secret(message.seat_key))
        if mine is not None and message.player_key:
            room = self._linked(room, mine.id, message.player_key)
        return self.sit_down(seat, message.id, room, hash_of_secret(message.seat_key))

    def _linked(self, room: Room, player: str, player_key: str) -> Room:
        """The room with this seat in the history of whoever has the key, or in nobody's."""
        owner = player_of(player_key) if player_key else ""
        if player in room.players and room.players[player].owner == owner:
            return room
        return self.rooms.handle(room.id, LinkSeat(player=player, owner=owner))

    def sit_down(self, seat: Seat, message_id: str, room: Room, key_hash: str) -> Reply:
        """Let a connection sit in the seat whose key has this hash."""
        player = player_of_key(room, key_hash)
        if player is None:
            return refused(message_id, "unknown_seat", self.clock.now())
        return self._sit(seat, message_id, room, role="seat", player=player.id)

    def _sit(self, seat: Seat, message_id: str, room: Room, *, role: Role, player: str = "") -> Reply:
        if seat.room and seat.room != room.id:
            self.lines.leave_room(seat.sid, public_of(seat.room))
        self.seats.take(seat.sid, role=role, room=room.id, player=player)
        self.lines.enter_room(seat.sid, public_of(room.id))
        return self._views(message_id, room, player)

    def _views(self, message_id: str, room: Room, player: str) -> Reply:
        now = self.clock.now()
        marks = self.broadcast.marks(room)
        own = own_view(room, player, marks, now) if player else None
        return done(message_id, now, public=public_view(room, marks, now), own=own)
