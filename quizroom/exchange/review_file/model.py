"""What stands in the file of a review. The JSON Schema is made from these classes (`schema.py`)."""

from dataclasses import dataclass
from datetime import datetime
from typing import Annotated, Any, Literal

from pydantic import Field

from quizroom.questions.blueprint import Blueprint
from quizroom.questions.model import Family, Item
from quizroom.room.bench_state import BenchRules
from quizroom.room.state import Timing

FORMAT = "quizroom review"
VERSION = 1
MOST_ITEMS = 60
MOST_STEPS = 200_000
MOST_PICTURES = 60
LONGEST_PICTURE = 14_000_000
"""Letters of base64: ten million bytes and a little."""

Title = Annotated[str, Field(max_length=120)]
Seconds = Annotated[int, Field(ge=5, le=3600)]


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanInFile:
    """What the host chose. Who plays, for which roster, and how a group ran by itself, stays at home."""

    title: Title
    course: Annotated[str, Field(max_length=80)]
    course_title: Title
    families: Annotated[tuple[Family, ...], Field(max_length=30)]
    seed: Annotated[int, Field(ge=0, lt=2**31)]
    timing: Timing
    seconds: Seconds
    typed: bool
    standings: bool
    certainty: bool
    holds_results: bool
    blueprint: Blueprint | None
    benches: BenchRules | None
    players_take_time: bool = True


@dataclass(frozen=True, slots=True, kw_only=True)
class PictureInFile:
    """A picture; items name it. `body` is base64 (RFC 4648) of a PNG, JPEG or WebP."""

    name: Annotated[str, Field(min_length=1, max_length=64)]
    body: Annotated[str, Field(max_length=LONGEST_PICTURE, pattern=r"^[A-Za-z0-9+/]*={0,2}$")]


@dataclass(frozen=True, slots=True, kw_only=True)
class SeatTaken:
    """Somebody took a seat under this handle; their first counted round is `from_round`."""

    handle: Annotated[str, Field(min_length=1, max_length=40)]
    from_round: Annotated[int, Field(ge=1, le=MOST_ITEMS)]


@dataclass(frozen=True, slots=True, kw_only=True)
class Happened:
    """How the review went, step by step. Players are called by their handles, and by nothing else."""

    prepared_at: datetime
    steps: Annotated[tuple[Any, ...], Field(max_length=MOST_STEPS)]


@dataclass(frozen=True, slots=True, kw_only=True)
class ReviewFile:
    """A review: its plan, its items in their order, their pictures, and what happened, if that was wished."""

    format: Literal["quizroom review"]
    version: Literal[1]
    plan: PlanInFile
    items: Annotated[tuple[Item, ...], Field(min_length=1, max_length=MOST_ITEMS)]
    pictures: Annotated[tuple[PictureInFile, ...], Field(max_length=MOST_PICTURES)]
    happened: Happened | None
