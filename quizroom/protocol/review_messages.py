"""Messages of owners about reviews as things: titles, copies, days, and what is put away or deleted."""

from dataclasses import dataclass
from typing import Annotated, Literal

from pydantic import Field

from quizroom.protocol.fields import MessageId, RoomId, Seconds, Title
from quizroom.room.state import Timing


@dataclass(frozen=True, slots=True, kw_only=True)
class RenameReview:
    """Host: give a review another title."""

    id: MessageId
    type: Literal["rename_review"]
    room: RoomId
    title: Title


@dataclass(frozen=True, slots=True, kw_only=True)
class ChangeReview:
    """Host: choose timing and certainty of a review anew, before its door is open.

    None leaves as it is whether players may take more time by themselves.
    """

    id: MessageId
    type: Literal["change_review"]
    room: RoomId
    timing: Timing
    seconds: Seconds
    certainty: bool
    players_take_time: bool | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class CopyReview:
    """Host: lay a review out again, with the same items or with items dealt anew by the same plan."""

    id: MessageId
    type: Literal["copy_review"]
    room: RoomId
    dealt: Literal["same", "anew"]


@dataclass(frozen=True, slots=True, kw_only=True)
class ScheduleReview:
    """Host: plan a review for a moment (ms since 1970, UTC), or for none."""

    id: MessageId
    type: Literal["schedule_review"]
    room: RoomId
    at: Annotated[int, Field(ge=0, le=32_503_680_000_000)] | None
    opens_itself: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class ReviewStep:
    """Host: put a review away, take it out again, or erase it with all that was answered."""

    id: MessageId
    type: Literal["archive_review", "unarchive_review", "delete_review"]
    room: RoomId


@dataclass(frozen=True, slots=True, kw_only=True)
class MoveItem:
    """Host: put an item that is ahead into another place; `item` guards against doing it twice."""

    id: MessageId
    type: Literal["move_item"]
    position: Annotated[int, Field(ge=0, le=1000)]
    item: Annotated[str, Field(min_length=1, max_length=200)]
    to: Annotated[int, Field(ge=0, le=1000)]


ReviewMessage = RenameReview | ChangeReview | CopyReview | ScheduleReview | ReviewStep
