"""What is seen of a talk: second answers beside the first, and what the desk is advised.

Units as in `public_model.py`.
"""

from dataclasses import dataclass
from typing import Literal

from quizroom.analysis.talk import Advice


@dataclass(frozen=True, slots=True, kw_only=True)
class SecondShare:
    """How often an option was chosen again, or a place or row was right, in the order of the first."""

    letter: str
    count: int
    share: float


@dataclass(frozen=True, slots=True, kw_only=True)
class SecondTyped:
    """Second typed answers that came to the same verdict; spelled out as in `TypedResult`."""

    text: str
    verdict: Literal["right", "half", "wrong", "doubtful"]
    count: int
    share: float


@dataclass(frozen=True, slots=True, kw_only=True)
class SecondFace:
    """Second answers of a round, beside its result."""

    answered: int
    right: int
    """How many had the full mark."""
    first_right: int
    """How many of those of the first answers had it."""
    options: tuple[SecondShare, ...]
    rows: tuple[SecondShare, ...]
    typed: tuple[SecondTyped, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class RightFace:
    """How many had the full mark of how many; `share` is None if nobody answered."""

    right: int
    of: int
    share: float | None


@dataclass(frozen=True, slots=True, kw_only=True)
class ChangeFace:
    """What became of those who answered both times, and the normalised gain or why there is none."""

    right_right: int
    right_wrong: int
    wrong_right: int
    wrong_wrong: int
    gain: float | None
    no_gain: str


@dataclass(frozen=True, slots=True, kw_only=True)
class TalkPanel:
    """The desk's part of a talk over one round, never on the wall."""

    round: int
    first: RightFace
    advice: Advice | None
    """What is advised as long as there is a choice; None once there is none."""
    second: SecondFace | None
    """Second answers, also while they come in."""
    change: ChangeFace | None
    """Once the second answering is closed."""
    twin_round: int | None
    twin: RightFace | None
