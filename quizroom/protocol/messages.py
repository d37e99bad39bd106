"""What clients say, joined from the files of each subject; what they are told is in `replies` and `views`.

A client sends one Socket.IO event, `say`, with one of the `ClientMessage` shapes, and gets a
`Reply` as the event's acknowledgement. The server sends `public`, `own` and `desk` (whole
views) and `tally` (counts between phases). Every message has an `id` chosen by the client:
sending the same message again is harmless and gets the same kind of reply.
"""

from typing import Annotated

from pydantic import Field

from quizroom.protocol.bench_messages import BenchMessage
from quizroom.protocol.change_messages import FlagMessage, KeyMessage
from quizroom.protocol.credit_messages import ClaimIdentity
from quizroom.protocol.desk_messages import DeskMessage
from quizroom.protocol.group_messages import GroupMessage
from quizroom.protocol.host_messages import HostMessage
from quizroom.protocol.own_messages import OwnMessage
from quizroom.protocol.review_messages import MoveItem, ReviewMessage
from quizroom.protocol.seat_messages import SeatMessage
from quizroom.protocol.talk_messages import TalkMessage
from quizroom.protocol.time_messages import TimeMessage

ClientMessage = Annotated[
    SeatMessage
    | DeskMessage
    | HostMessage
    | GroupMessage
    | BenchMessage
    | ClaimIdentity
    | OwnMessage
    | KeyMessage
    | FlagMessage
    | TalkMessage
    | ReviewMessage
    | MoveItem
    | TimeMessage,
    Field(discriminator="type"),
]
