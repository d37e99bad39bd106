"""Messages about benches."""

from dataclasses import dataclass
from typing import Annotated, Literal

from pydantic import Field

from quizroom.protocol.fields import LetterOrNone, MessageId, PlayerId, RoundNumber, Words

BenchName = Annotated[str, Field(max_length=80)]


@dataclass(frozen=True, slots=True, kw_only=True)
class BenchChoice:
    """How benches are to be played: how players come to them, of which size, with one answer each or not."""

    how: Literal["choice", "drawn"]
    size: Annotated[int, Field(ge=2, le=12)] = 4
    answers: bool = True
    stations: bool = False
    """Whether benches may start at different items and move on at a bell."""


@dataclass(frozen=True, slots=True, kw_only=True)
class TakeBench:
    """Player: take the bench of this name, or found it; an empty name leaves."""

    id: MessageId
    type: Literal["take_bench"]
    bench: BenchName


@dataclass(frozen=True, slots=True, kw_only=True)
class AnswerForBench:
    """Player: hand in for the whole bench, after having answered alone."""

    id: MessageId
    type: Literal["answer_for_bench"]
    round: RoundNumber
    choice: Annotated[tuple[LetterOrNone, ...], Field(max_length=10)] = ()
    typed: Annotated[tuple[Words, ...], Field(max_length=10)] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class SeatAtBench:
    """Host: move a player to a bench."""

    id: MessageId
    type: Literal["seat_at_bench"]
    player: PlayerId
    bench: BenchName


@dataclass(frozen=True, slots=True, kw_only=True)
class DrawBenches:
    """Host, or whoever opened a group: draw benches anew for everybody who is here."""

    id: MessageId
    type: Literal["draw_benches"]


@dataclass(frozen=True, slots=True, kw_only=True)
class RenameBench:
    """Host: give a bench another name."""

    id: MessageId
    type: Literal["rename_bench"]
    bench: BenchName
    name: BenchName


BenchMessage = RenameBench | TakeBench | AnswerForBench | SeatAtBench | DrawBenches
