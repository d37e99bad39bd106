"""What study groups say, and what comes of it."""

from collections.abc import Callable
from dataclasses import dataclass

from quizroom.protocol import group_messages
from quizroom.protocol.group_messages import GroupMessage
from quizroom.protocol.plans import plan_of_group
from quizroom.protocol.replies import Reply
from quizroom.realtime.replies import done, refused
from quizroom.realtime.seat_replies import SeatReplies
from quizroom.realtime.seats import Seat
from quizroom.room.group_commands import AskPause, GoOn, GroupCommand, RenameSelf, SayReady, SendOut
from quizroom.service.groups import Groups
from quizroom.service.hashing import hash_of_secret
from quizroom.service.players import player_of
from quizroom.service.ports import Clock


@dataclass(frozen=True, slots=True, kw_only=True)
class GroupReplies:
    """Answers the messages of players whose review nobody leads."""

    groups: Groups
    seat_replies: SeatReplies
    clock: Clock
    new_seed: Callable[[], int]

    def answer(self, seat: Seat, message: GroupMessage) -> Reply:
        """Carry out a message. Refusals, and reasons that no review came of it, are raised."""
        if isinstance(
            message, group_messages.OpenGroup | group_messages.RenameSelf
        ) and self.seat_replies.reads_rudely(message.handle):
            return refused(message.id, "rude_handle", self.clock.now())
        if isinstance(message, group_messages.OpenGroup):
            return self._open(seat, message)
        if seat.role != "seat":
            return refused(message.id, "no_seat", self.clock.now())
        self.groups.rooms.handle(seat.room, _command(message, seat.player))
        return done(message.id, self.clock.now())

    def _open(self, seat: Seat, message: group_messages.OpenGroup) -> Reply:
        key_hash = hash_of_secret(message.seat_key)
        owner = player_of(message.player_key) if message.player_key else ""
        course = self.groups.reviews.course(message.course)
        plan = plan_of_group(message, course, seed=self.new_seed(), limits=self.groups.limits)
        room = self.groups.open(plan, handle=message.handle, key_hash=key_hash, owner=owner, order=message.id)
        return self.seat_replies.sit_down(seat, message.id, room, key_hash)


def _command(message: GroupMessage, player: str) -> GroupCommand:
    match message:
        case group_messages.SayReady():
            return SayReady(player=player, round=message.round, alone=message.alone)
        case group_messages.PauseStep(type="ask_pause"):
            return AskPause(player=player, round=message.round)
        case group_messages.PauseStep():
            return GoOn(player=player, round=message.round)
        case group_messages.RenameSelf():
            return RenameSelf(player=player, handle=message.handle)
        case group_messages.SendOut():
            return SendOut(by=player, player=message.player)
        case group_messages.OpenGroup():
            raise TypeError("this is answered before")
