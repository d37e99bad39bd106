"""The steps of a review as they stand in its file: the events of its log, without whose they were.

Each is `{"step": kind, "event": fields}`. Players are named by their handles, hosts not at all.
"""

from collections.abc import Mapping
from dataclasses import replace
from functools import cache
from typing import Annotated, Any, Literal, get_args

from pydantic import ConfigDict, Field, TypeAdapter, create_model

from quizroom.exchange.review_file.model import SeatTaken
from quizroom.room.bench_events import BenchAnswered, BenchesDrawn, BenchEvent
from quizroom.room.change_events import ItemRekeyed, KeyRestored
from quizroom.room.events import (
    AnswerAccepted,
    Event,
    HoldingSet,
    ItemRestored,
    ItemStruck,
    RecordShown,
    ResultShown,
    ReviewEnded,
    RoundClosed,
    RoundOpened,
    RoundPaused,
    RoundResumed,
    SeatEntered,
    StandingsSet,
    TimeAdded,
    WordsRuled,
)
from quizroom.room.talk_events import TalkEvent

Told = (
    RoundOpened
    | AnswerAccepted
    | RoundPaused
    | RoundResumed
    | TimeAdded
    | RoundClosed
    | HoldingSet
    | ResultShown
    | RecordShown
    | ItemStruck
    | ItemRestored
    | WordsRuled
    | StandingsSet
    | ReviewEnded
    | BenchEvent
    | ItemRekeyed
    | KeyRestored
    | TalkEvent
)
"""Events that are told as they are; a seat is told by its handle alone (`SeatTaken`).

Flags stay at home: nobody is to learn whose they are.
"""
Step = SeatTaken | Told
NOBODY = ""
"""Stands for a player who is not in the room any more, where a bench has answered."""


def told(event: Event, handles: Mapping[str, str]) -> Step | None:
    """The step that an event is in a file; None for what stays at home.

    Args:
        event: of the log.
        handles: of the players who are still in the room, by id.
    """
    match event:
        case SeatEntered():
            handle = handles.get(event.player)
            return None if handle is None else SeatTaken(handle=handle, from_round=event.from_round)
        case BenchesDrawn():
            seats = tuple(
                replace(seat, player=handles[seat.player]) for seat in event.seats if seat.player in handles
            )
            return replace(event, seats=seats, by="")
        case BenchAnswered():
            return replace(event, player=handles.get(event.player, NOBODY))
        case TimeAdded():
            return replace(event, order="")
        case _ if isinstance(event, get_args(Told)):
            return _without_names(event, handles)
        case _:
            return None


def event_of(step: Step, players: Mapping[str, str]) -> Event:
    """The event that a step becomes in a new log; `players` gives the ids of handles. Raises KeyError."""
    match step:
        case SeatTaken():
            player = players[step.handle]
            return SeatEntered(player=player, handle=step.handle, key_hash="", from_round=step.from_round)
        case BenchesDrawn():
            seats = tuple(replace(seat, player=players[seat.player]) for seat in step.seats)
            return replace(step, seats=seats)
        case BenchAnswered(player="") | _ if not getattr(step, "player", NOBODY):
            return step
        case _:
            changed: Any = step
            named: Event = replace(changed, player=players[changed.player])
            return named


@cache
def step_adapter() -> TypeAdapter[Any]:
    """Reads and writes one step."""
    kinds = [_step_model(kind) for kind in get_args(Step)]
    union: Any = kinds[0]
    for kind in kinds[1:]:
        union |= kind
    return TypeAdapter(Annotated[union, Field(discriminator="step")])


def _step_model(kind: Any) -> Any:
    """The object that holds an event of this kind, and says of which it is."""
    fields: dict[str, Any] = {"step": (Literal[kind.__name__], ...), "event": (kind, ...)}
    return create_model(f"{kind.__name__}Step", __config__=ConfigDict(extra="forbid"), **fields)


def _without_names(event: Any, handles: Mapping[str, str]) -> Step | None:
    """An event without its host's name, and with its player's handle; None if that player is gone."""
    changes = {"by": ""} if hasattr(event, "by") else {}
    if hasattr(event, "player"):
        if event.player not in handles:
            return None
        changes["player"] = handles[event.player]
    named: Step = replace(event, **changes)
    return named
