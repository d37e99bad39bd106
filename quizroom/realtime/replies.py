"""Replies: one for every message, whatever happens."""

from datetime import datetime

from quizroom.protocol.messages import Reply, ReviewLine
from quizroom.protocol.sentences import SENTENCES, FailureCode, WireCode
from quizroom.room.refusals import RefusalCode
from quizroom.views.model import DeskView, OwnView, PublicView
from quizroom.views.moment import milliseconds


def done(
    message_id: str,
    now: datetime,
    *,
    public: PublicView | None = None,
    own: OwnView | None = None,
    desk: DeskView | None = None,
    reviews: tuple[ReviewLine, ...] | None = None,
    answer_round: int | None = None,
) -> Reply:
    """The order was carried out and is durable."""
    return Reply(
        id=message_id,
        result="done",
        now=milliseconds(now),
        public=public,
        own=own,
        desk=desk,
        reviews=reviews,
        answer_round=answer_round,
    )


def refused(message_id: str, code: RefusalCode | WireCode, now: datetime, *, text: str = "") -> Reply:
    """The order cannot be carried out; `text` is for people."""
    return Reply(
        id=message_id, result="refused", now=milliseconds(now), code=code, text=text or SENTENCES[code]
    )


def failed(message_id: str, code: FailureCode, now: datetime) -> Reply:
    """The server is at fault; the same message may be sent again."""
    return Reply(id=message_id, result="failed", now=milliseconds(now), code=code, text=SENTENCES[code])
