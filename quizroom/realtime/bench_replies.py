"""What is said about benches, and what comes of it."""

from dataclasses import dataclass
from hashlib import sha256

from quizroom.protocol import bench_messages
from quizroom.protocol.bench_messages import BenchMessage
from quizroom.protocol.replies import Reply
from quizroom.realtime.replies import done, refused
from quizroom.realtime.seat_replies import SeatReplies
from quizroom.realtime.seats import Seat
from quizroom.room.bench_commands import (
    AnswerForBench,
    BenchCommand,
    DrawBenches,
    RenameBench,
    SeatAtBench,
    TakeBench,
)


@dataclass(frozen=True, slots=True, kw_only=True)
class BenchReplies:
    """Answers messages about benches, of players and of hosts."""

    seat_replies: SeatReplies

    def answer(self, seat: Seat, message: BenchMessage) -> Reply:
        """Carry out a message. Refusals of the room itself are raised."""
        now = self.seat_replies.clock.now()
        by_host = isinstance(message, bench_messages.SeatAtBench | bench_messages.RenameBench) or (
            isinstance(message, bench_messages.DrawBenches) and seat.role != "seat"
        )
        if by_host and not self._leads(seat):
            return refused(message.id, "not_host", now)
        if not by_host and seat.role != "seat":
            return refused(message.id, "no_seat", now)
        if isinstance(message, bench_messages.TakeBench) and self.seat_replies.reads_rudely(message.bench):
            return refused(message.id, "rude_handle", now)
        command = _command(message, "" if by_host else seat.player, seat.host_name)
        self.seat_replies.rooms.handle(seat.room, command)
        return done(message.id, self.seat_replies.clock.now())

    def _leads(self, seat: Seat) -> bool:
        return (
            bool(seat.host)
            and seat.role == "desk"
            and self.seat_replies.rooms.room(seat.room).host == seat.host
        )


def _command(message: BenchMessage, player: str, host_name: str) -> BenchCommand:
    match message:
        case bench_messages.TakeBench():
            return TakeBench(player=player, bench=message.bench)
        case bench_messages.AnswerForBench():
            return AnswerForBench(
                player=player, round=message.round, choice=message.choice, typed=message.typed
            )
        case bench_messages.SeatAtBench():
            return SeatAtBench(player=message.player, bench=message.bench, by=host_name)
        case bench_messages.RenameBench():
            return RenameBench(bench=message.bench, name=message.name, by=host_name)
        case bench_messages.DrawBenches():
            # The seed comes from the message, so that its repeat draws the same.
            seed = int.from_bytes(sha256(message.id.encode()).digest()[:4], "big")
            return DrawBenches(seed=seed, by=player, host="" if player else host_name)
