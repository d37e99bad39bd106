"""The gate between sockets and the room: every message is read, admitted, carried out, answered."""

import logging
from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import Any

from quizroom.protocol.bench_messages import BenchMessage
from quizroom.protocol.codec import BadMessage, id_in, id_of, read_message, read_text, write, write_text
from quizroom.protocol.credit_messages import ClaimIdentity
from quizroom.protocol.desk_messages import ListReviews
from quizroom.protocol.group_messages import GroupMessage
from quizroom.protocol.messages import ClientMessage
from quizroom.protocol.replies import Reply
from quizroom.protocol.review_messages import ReviewMessage
from quizroom.protocol.sentences import SENTENCES, WireCode
from quizroom.realtime.bench_replies import BenchReplies
from quizroom.realtime.credit_replies import CreditReplies
from quizroom.realtime.desk_replies import DeskReplies
from quizroom.realtime.door import admit
from quizroom.realtime.group_replies import GroupReplies
from quizroom.realtime.replies import NOT_DEALT, failed, not_dealt, refused
from quizroom.realtime.review_replies import ReviewReplies
from quizroom.realtime.rights import may_say, needs_host
from quizroom.realtime.seat_replies import SeatMessage, SeatReplies
from quizroom.realtime.seats import Seat, Seats
from quizroom.room.refusals import Refused
from quizroom.service.host_ports import Host
from quizroom.service.ports import Clock, NotStored
from quizroom.service.rooms import UnknownRoom

logger = logging.getLogger(__name__)


NOT_READ = "not read"
"""Stands for the type of a message that was refused before it was understood."""


UNCOUNTED = ("bring_time", "make_time_link", "set_time_factor", "take_time", "take_time_always")
"""Even as numbers these would tell that somebody has more time."""


def _nobody_counts(_type: str, _reply: Reply, _seconds: float) -> None:
    pass


@dataclass(frozen=True, slots=True, kw_only=True)
class Gateway:
    """Handlers of the socket server. `steady` counts seconds.

    `session_of` reads the cookie header; `host_of` says whose a session is, at each message of a host anew.
    `answered` is told the type of each message, its reply, and the seconds between.
    """

    seats: Seats
    seat_replies: SeatReplies
    desk_replies: DeskReplies
    group_replies: GroupReplies
    bench_replies: BenchReplies
    credit_replies: CreditReplies
    review_replies: ReviewReplies
    clock: Clock
    session_of: Callable[[str], str]
    host_of: Callable[[str], Host | None]
    steady: Callable[[], float]
    answered: Callable[[str, Reply, float], None] = _nobody_counts

    def connect(self, sid: str, environ: dict[str, Any]) -> None:
        """A connection begins; a host is recognised by the cookie."""
        self.seats.connect(sid, session=self.session_of(environ.get("HTTP_COOKIE", "")), now=self.steady())

    def disconnect(self, sid: str, _reason: str = "") -> None:
        """A connection ends; the seat in the room stays."""
        self.seats.disconnect(sid)

    def say(self, sid: str, raw: Any = None, *_more: Any) -> Any:
        """Answer one message. Never raises: whatever it is, the connection lives."""
        return write(self._timed(sid, raw, read_message, id_of))

    def say_text(self, sid: str, text: bytes) -> bytes:
        """The same for the JSON text of a message, with that of the reply.

        Raises:
            NotJson: it is none.
        """
        return write_text(self._timed(sid, text, read_text, id_in))

    def _timed(
        self, sid: str, raw: Any, read: Callable[[Any], ClientMessage], name: Callable[[Any], str]
    ) -> Reply:
        began = self.steady()
        kind, reply = self._reply(sid, raw, read, name)
        if kind not in UNCOUNTED:
            self.answered(kind, reply, self.steady() - began)
        return reply

    def _reply(
        self, sid: str, raw: Any, read: Callable[[Any], ClientMessage], name: Callable[[Any], str]
    ) -> tuple[str, Reply]:
        seat = self.seats.seat_of(sid)
        if seat is None:
            return NOT_READ, refused(name(raw), "no_seat", self.clock.now())
        if not admit(seat.credits, self.steady()):
            return NOT_READ, refused(name(raw), "slow_down", self.clock.now())
        try:
            message = read(raw)
        except BadMessage as bad:
            text = f"{SENTENCES['bad_message']} {bad.where}."
            return NOT_READ, refused(bad.message_id, "bad_message", self.clock.now(), text=text)
        return message.type, self._answer(seat, message)

    def _answer(self, seat: Seat, message: ClientMessage) -> Reply:
        try:
            if needs_host(message.type, role=seat.role):
                seat = replace(seat, who=self.host_of(seat.session))
                if seat.who is None or not may_say(seat.who, message.type):
                    code: WireCode = "owner_only" if seat.who else "not_host"
                    return refused(message.id, code, self.clock.now())
            if isinstance(message, SeatMessage):
                return self.seat_replies.answer(seat, message)
            if isinstance(message, BenchMessage):
                return self.bench_replies.answer(seat, message)
            if isinstance(message, ClaimIdentity):
                return self.credit_replies.answer(seat, message)
            if isinstance(message, GroupMessage):
                return self.group_replies.answer(seat, message)
            if isinstance(message, ReviewMessage | ListReviews):
                return self.review_replies.answer(seat, message)
            return self.desk_replies.answer(seat, message)
        except Refused as refusal:
            return refused(message.id, refusal.code, self.clock.now())
        except UnknownRoom:
            return refused(message.id, "unknown_room", self.clock.now())
        except tuple(NOT_DEALT) as reason:
            return not_dealt(message.id, reason, self.clock.now())
        except NotStored as failure:
            # In one line: while a disk is full a class sends each answer again and again.
            logger.warning("an order could not be made durable: %s", failure.first_line)
            return failed(message.id, "not_stored", self.clock.now())
        except Exception:
            logger.exception("a message of type %s could not be carried out", message.type)
            return failed(message.id, "broken", self.clock.now())
