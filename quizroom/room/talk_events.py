"""Facts about talking over a round and answering it again; the answers are `AnswerAccepted(again=True)`."""

from dataclasses import dataclass
from datetime import datetime
from typing import Literal

from quizroom.questions.model import Item


@dataclass(frozen=True, slots=True, kw_only=True)
class TalkOpened:
    """Neighbours talk about the round until `closes_at`."""

    round: int
    at: datetime
    closes_at: datetime


@dataclass(frozen=True, slots=True, kw_only=True)
class AgainOpened:
    """The talk is over; the round takes second answers until `closes_at`, or without limit if None."""

    round: int
    cause: Literal["host", "time"]
    at: datetime
    closes_at: datetime | None


@dataclass(frozen=True, slots=True, kw_only=True)
class AgainClosed:
    """The second answering has ended."""

    round: int
    cause: Literal["host", "time", "end"]
    at: datetime


@dataclass(frozen=True, slots=True, kw_only=True)
class TwinAdded:
    """This item comes next, and asks the fact of the round once more.

    Only a review's file has it further back, behind `position` items: a twin that was never asked.
    """

    round: int
    item: Item
    at: datetime
    position: int = 0


TalkEvent = TalkOpened | AgainOpened | AgainClosed | TwinAdded
