"""Replies: one for every message, whatever happens."""

from collections.abc import Mapping
from datetime import datetime
from types import MappingProxyType

from quizroom.protocol.replies import Reply, ReviewLine
from quizroom.protocol.sentences import SENTENCES, FailureCode, WireCode
from quizroom.questions.deck import CannotDeal
from quizroom.room.refusals import RefusalCode
from quizroom.service.groups import GroupsOff, TooManyGroups
from quizroom.service.own_items import NoSuchOwnItem, NotReady
from quizroom.service.reviews import NoDoorFree, UnknownCourse
from quizroom.service.rosters import UnknownRoster
from quizroom.service.twins import NoTwin
from quizroom.views.desk_model import DeskView
from quizroom.views.moment import milliseconds
from quizroom.views.own_model import OwnView
from quizroom.views.public_model import PublicView


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


NOT_DEALT: Mapping[type[Exception], WireCode] = MappingProxyType(
    {
        CannotDeal: "cannot_deal",
        GroupsOff: "groups_off",
        NoDoorFree: "no_door_free",
        NoSuchOwnItem: "no_such_own_item",
        NotReady: "not_ready",
        NoTwin: "no_twin",
        TooManyGroups: "too_many_groups",
        UnknownCourse: "unknown_course",
        UnknownRoster: "unknown_roster",
    }
)
"""Why no review, or no item, came of an order, for a host and for a group alike."""


def not_dealt(message_id: str, reason: Exception, now: datetime) -> Reply:
    """No review came of an order; where its settings yield too little, `reason` says what."""
    code = NOT_DEALT[type(reason)]
    text = f"{SENTENCES[code]} {reason}" if isinstance(reason, (CannotDeal, NoTwin)) else ""
    return refused(message_id, code, now, text=text)


def failed(message_id: str, code: FailureCode, now: datetime) -> Reply:
    """The server is at fault; the same message may be sent again."""
    return Reply(id=message_id, result="failed", now=milliseconds(now), code=code, text=SENTENCES[code])
