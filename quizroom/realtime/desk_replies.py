"""What the host says, and what comes of it."""

from collections.abc import Callable
from dataclasses import dataclass

from quizroom.protocol import desk_messages, host_messages
from quizroom.protocol.change_messages import KeyMessage
from quizroom.protocol.own_messages import AddOwnItem, OwnMessage, SwapForOwn
from quizroom.protocol.plans import plan_of_host
from quizroom.protocol.replies import Reply
from quizroom.protocol.review_messages import MoveItem
from quizroom.protocol.talk_messages import LetTalk, TalkMessage, TalkStep
from quizroom.protocol.time_messages import MakeTimeLink, SetTimeFactor
from quizroom.protocol.translate import host_command, talk_command
from quizroom.realtime.broadcast import Broadcast
from quizroom.realtime.desk_telling import desk_of
from quizroom.realtime.lines import Lines
from quizroom.realtime.replies import done
from quizroom.realtime.seats import Seat, Seats
from quizroom.room.commands import Command
from quizroom.room.state import Plan, Room
from quizroom.service.own_dealing import OwnDealing
from quizroom.service.ports import Clock
from quizroom.service.reviews import Reviews
from quizroom.service.rooms import Rooms, UnknownRoom
from quizroom.service.rosters import Rosters, UnknownRoster
from quizroom.views.desk import desk_view

HostMessage = (
    desk_messages.PrepareReview
    | desk_messages.OpenDesk
    | host_messages.HostMessage
    | OwnMessage
    | KeyMessage
    | TalkMessage
    | MoveItem
    | SetTimeFactor
    | MakeTimeLink
)


@dataclass(frozen=True, slots=True, kw_only=True)
class DeskReplies:
    """Answers the messages of hosts. Who is a host, and may say this, was judged by the gateway."""

    reviews: Reviews
    rosters: Rosters
    own_dealing: OwnDealing
    rooms: Rooms
    seats: Seats
    lines: Lines
    broadcast: Broadcast
    clock: Clock
    new_seed: Callable[[], int]
    capacity: int

    def answer(self, seat: Seat, message: HostMessage) -> Reply:
        """Carry out a host's message. Refusals, and reasons that no review came of it, are raised."""
        match message:
            case desk_messages.PrepareReview():
                room = self.reviews.prepare(self._plan(message, seat.host), host=seat.host, order=message.id)
                return self._at_desk(seat, message.id, room)
            case desk_messages.OpenDesk():
                return self._at_desk(seat, message.id, self._own_room(seat, message.room))
            case _:
                self._carry_out(self._own_room(seat, seat.room), message, by=seat.host_name)
                return done(message.id, self.clock.now())

    def _carry_out(self, room: Room, message: HostMessage, *, by: str) -> None:
        match message:
            case host_messages.ItemStep(type="swap_item"):
                self.reviews.swap(room, position=message.position, instead_of=message.item)
            case AddOwnItem():
                self.own_dealing.add(room, message.own_item, position=message.position)
            case SwapForOwn():
                self.own_dealing.swap(
                    room, message.own_item, position=message.position, instead_of=message.item
                )
            case host_messages.RoundStep(type="open_door"):
                self.reviews.open_door(room)
            case TalkStep(type="ask_twin"):
                self.reviews.add_twin(room, round_number=message.round)
            case LetTalk() | TalkStep():
                order = talk_command(message)
                if order is not None:
                    self.rooms.handle(room.id, order)
            case desk_messages.PrepareReview() | desk_messages.OpenDesk():
                raise TypeError("these are answered before")
            case _:
                command: Command | None = host_command(message, by=by)
                if command is not None:
                    self.rooms.handle(room.id, command)

    def _at_desk(self, seat: Seat, message_id: str, room: Room) -> Reply:
        if seat.room:
            self.lines.leave_room(seat.sid, desk_of(seat.room))
        self.seats.take(seat.sid, role="desk", room=room.id, who=seat.who)
        self.lines.enter_room(seat.sid, desk_of(room.id))
        now = self.clock.now()
        return done(message_id, now, desk=desk_view(room, self.broadcast.marks(room), now))

    def _own_room(self, seat: Seat, room_id: str) -> Room:
        room = self.rooms.fresh(room_id)
        if room.host != seat.host:
            raise UnknownRoom(room_id)
        return room

    def _plan(self, message: desk_messages.PrepareReview, host: str) -> Plan:
        if message.roster and self.rosters.own(host, message.roster) is None:
            raise UnknownRoster
        course = self.reviews.course(message.course)
        return plan_of_host(message, course, seed=self.new_seed(), capacity=self.capacity)
