"""Looks as they are kept: an item asked of one player alone, and the first answer to it."""

from dataclasses import dataclass
from datetime import date, datetime
from typing import Literal

from quizroom.questions.model import Item

SetKind = Literal["practice", "mock"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Missed:
    """What was asked in a review, and what was answered. `contrast` is the truth about a wrong answer."""

    title: str
    at: datetime
    stem: str
    chosen: str
    key_text: tuple[str, ...]
    contrast: str | None


@dataclass(frozen=True, slots=True, kw_only=True)
class AskedLook:
    """One item for one player. `place` counts from 1 within its set.

    `origin` says why it was made: `room <id> <round>` for what was missed there, `plan <fact>` for what came
    back, `practice` or `mock`.
    """

    id: str
    player: str
    set: str
    place: int
    made_at: datetime
    course: str
    origin: str
    item: Item
    missed: Missed | None = None
    fact: str = ""
    """The fact that it is about, if it was made for one; else its item tells."""


@dataclass(frozen=True, slots=True, kw_only=True)
class GivenAnswer:
    """The first answer to a look. Neither letters nor words: it was left blank."""

    look: str
    choice: tuple[str, ...]
    typed: tuple[str, ...]
    certainty: int | None
    took_ms: int
    answered_at: datetime
    received_at: datetime


@dataclass(frozen=True, slots=True, kw_only=True)
class LookSet:
    """A set of practice that a player ordered; `seconds` for each station, None for untimed."""

    id: str
    player: str
    kind: SetKind
    title: str
    course: str
    seconds: int | None
    made_at: datetime


@dataclass(frozen=True, slots=True, kw_only=True)
class Wishes:
    """What a player's return plan is made for."""

    course: str = ""
    exam_date: date | None = None
    minutes_a_day: int = 15
    time_zone: str = "UTC"
