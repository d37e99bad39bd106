"""Answers in a player's own time, as a file tells them: in time, lest it tell who has a time factor."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import datetime

from quizroom.room.events import AnswerAccepted, Event, RoundClosed, RoundOpened
from quizroom.room.talk_events import AgainClosed, AgainOpened


def without_lateness(log: Sequence[Event]) -> list[Event]:
    """The log with every answer before the closing of its round, among the others by its moment."""
    told: list[Event] = []
    closed: set[tuple[int, bool]] = set()
    for event in log:
        match event:
            case AnswerAccepted() if (event.round, event.again) in closed:
                closing = _closing_of(told, event)
                _insert(told, closing, _moved(told, closing, event))
            case RoundClosed() | AgainClosed():
                closed.add((event.round, isinstance(event, AgainClosed)))
                told.append(event)
            case _:
                told.append(event)
    return told


def _closing_of(told: Sequence[Event], answer: AnswerAccepted) -> int:
    """The place of the closing after which an answer came."""
    kind = AgainClosed if answer.again else RoundClosed
    return next(
        place for place, event in enumerate(told) if isinstance(event, kind) and event.round == answer.round
    )


def _moved(told: Sequence[Event], closing: int, answer: AnswerAccepted) -> AnswerAccepted:
    """The answer at a moment between opening and closing: the later it came, the later, without a step."""
    opened, closed = _opening(told, answer), getattr(told[closing], "at", answer.at)
    took, length = (answer.at - opened).total_seconds(), (closed - opened).total_seconds()
    if took <= 0 or length <= 0:
        return replace(answer, at=opened)
    return replace(answer, at=opened + (closed - opened) * (took / (took + length)))


def _opening(told: Sequence[Event], answer: AnswerAccepted) -> datetime:
    kind = AgainOpened if answer.again else RoundOpened
    return next(event.at for event in told if isinstance(event, kind) and event.round == answer.round)


def _insert(told: list[Event], closing: int, answer: AnswerAccepted) -> None:
    place = closing
    while isinstance(before := told[place - 1], AnswerAccepted) and before.at > answer.at:
        place -= 1
    told.insert(place, answer)
