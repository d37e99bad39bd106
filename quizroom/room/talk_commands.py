"""Orders about talking over a round and answering it again."""

from dataclasses import dataclass

from quizroom.questions.model import Item

TALK_S = 120
"""How long neighbours talk unless the host says otherwise: common practice, no source."""
LONGEST_TALK_S = 600


@dataclass(frozen=True, slots=True, kw_only=True)
class LetTalk:
    """Let neighbours talk about the closed round, whose result is held, for so many seconds."""

    round: int
    seconds: int = TALK_S
    ends_own_time: bool = False
    """Whether the host knows that it ends the time which single players still have."""


@dataclass(frozen=True, slots=True, kw_only=True)
class OpenAgain:
    """End the talk and take second answers: by the host, or by the alarm once the talk's time is over."""

    round: int
    by_host: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class CloseAgain:
    """End the second answering; like `CloseRound`, which ends the first."""

    round: int
    by_host: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class AddTwin:
    """Put another item about the same fact next, as the twin of a round that was answered again."""

    round: int
    item: Item


TalkCommand = LetTalk | OpenAgain | CloseAgain | AddTwin
