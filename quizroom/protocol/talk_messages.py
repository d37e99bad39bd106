"""Messages about talking over a round."""

from dataclasses import dataclass
from typing import Annotated, Literal

from pydantic import Field

from quizroom.protocol.fields import MessageId, RoundNumber


@dataclass(frozen=True, slots=True, kw_only=True)
class LetTalk:
    """Host: let neighbours talk about the closed round, for so many seconds."""

    id: MessageId
    type: Literal["let_talk"]
    round: RoundNumber
    seconds: Annotated[int, Field(ge=10, le=600)] = 120
    ends_own_time: bool = False
    """Whether the host knows that it ends the time which single players still have."""


@dataclass(frozen=True, slots=True, kw_only=True)
class TalkStep:
    """Host: end the talk and take second answers, close these, or put a twin of the round's item next."""

    id: MessageId
    type: Literal["open_again", "close_again", "ask_twin"]
    round: RoundNumber


TalkMessage = LetTalk | TalkStep
