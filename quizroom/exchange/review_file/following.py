"""Following the steps of a file one by one: whether they could have happened, and to which room they lead."""

from collections.abc import Iterator, Mapping, Sequence
from datetime import datetime
from typing import Any

from quizroom.exchange.review_file.faults import Fault
from quizroom.exchange.review_file.item_faults import faults_of_item
from quizroom.exchange.review_file.model import SeatTaken
from quizroom.exchange.review_file.steps import Step, event_of
from quizroom.marking import marks_of_room
from quizroom.questions.rekeying import Rekeying, fits
from quizroom.room.answers import refuse_misfit
from quizroom.room.bench_events import BenchAnswered
from quizroom.room.change_events import ItemRekeyed
from quizroom.room.events import (
    AnswerAccepted,
    Event,
    ReviewEnded,
    RoundClosed,
    RoundOpened,
)
from quizroom.room.folding import apply
from quizroom.room.handles import folded, is_good_handle, tidy_handle
from quizroom.room.refusals import Refused
from quizroom.room.state import Room
from quizroom.room.talk_events import AgainOpened, TalkOpened, TwinAdded

NOT_POSSIBLE = "This could not have happened after the steps before it."


class _Impossible(Exception):
    """A step that could not have happened; the text says why."""


def players_of(steps: Sequence[Step], room_id: str) -> Mapping[str, str]:
    """Ids for all handles, made of the room's own."""
    handles = [step.handle for step in steps if isinstance(step, SeatTaken)]
    return {handle: f"{room_id}-{number}" for number, handle in enumerate(handles, 1)}


def followed(room: Room, steps: Sequence[Step], players: Mapping[str, str]) -> tuple[Event, ...] | Fault:
    """The events of all steps, or the first step that cannot be followed.

    Whatever a file says, folding must neither fail nor lead to a room that cannot be marked: each step is
    checked against the room, then folded; what still fails is a fault of the file.
    """
    events: list[Event] = []
    for place, step in enumerate(steps):
        path = f"happened.steps.{place}"
        fault = next(_faults_of_step(step, path), None)
        if fault is not None:
            return fault
        try:
            event = event_of(step, players)
            _refuse_impossible(room, step, event)
            room = apply(room, event)
        except _Impossible as why:
            return Fault(path=path, text=str(why))
        except Exception:  # noqa: BLE001 - whatever a file makes fold wrongly is the file's fault, not ours
            return Fault(path=path, text=NOT_POSSIBLE)
        events.append(event)
    if room.phase != "finished":
        return Fault(path="happened.steps", text="The review does not end: its last step is no ReviewEnded.")
    marks_of_room(room)
    return tuple(events)


def _faults_of_step(step: Step, path: str) -> Iterator[Fault]:
    if isinstance(step, SeatTaken):
        if tidy_handle(step.handle) != step.handle or not is_good_handle(step.handle):
            yield Fault(path=f"{path}.event.handle", text="This is no handle that a player could have taken.")
    else:
        values: list[Any] = [getattr(step, name) for name in step.__dataclass_fields__]
        if any(isinstance(value, datetime) and value.tzinfo is None for value in values):
            yield Fault(path=f"{path}.event", text="Times have their zone, such as 2031-09-03T12:00:00Z.")
    if isinstance(step, TwinAdded):
        yield from faults_of_item(step.item, f"{path}.event.item")


def _refuse_impossible(room: Room, step: Step, event: Event) -> None:
    if room.phase == "finished" and isinstance(
        event, RoundOpened | AnswerAccepted | RoundClosed | ReviewEnded
    ):
        raise _Impossible("The review has ended before.")
    number = getattr(event, "round", None)
    if number is not None and not isinstance(event, RoundOpened) and not 1 <= number <= len(room.rounds):
        raise _Impossible(f"Round {number} has not been opened.")
    match event:
        case RoundOpened():
            _refuse_opening(room, event)
        case RoundClosed() if room.phase != "answering" or number != len(room.rounds):
            raise _Impossible(f"Round {number} is not open.")
        case ReviewEnded() if room.phase == "answering":
            raise _Impossible("A round is still open.")
        case AnswerAccepted() | BenchAnswered():
            _refuse_answer(room, event)
        case ItemRekeyed() if not _may_be_keyed(room, event):
            raise _Impossible("This key does not fit the item.")
        case TalkOpened() | AgainOpened() if number != len(room.rounds):
            raise _Impossible("Only the last round is talked over.")
        case _ if isinstance(step, SeatTaken):
            _refuse_seat(room, step)


def _refuse_seat(room: Room, step: SeatTaken) -> None:
    if any(folded(player.handle) == folded(step.handle) for player in room.players.values()):
        raise _Impossible("Another player has this handle.")


def _refuse_opening(room: Room, event: RoundOpened) -> None:
    if room.phase == "answering" or event.round != len(room.rounds) + 1 or not room.ahead:
        raise _Impossible(f"Round {event.round} cannot be opened here.")


def _refuse_answer(room: Room, event: AnswerAccepted | BenchAnswered) -> None:
    current = room.rounds[event.round - 1]
    try:
        refuse_misfit(current.item, (event.choice, event.typed))
    except Refused as refusal:
        raise _Impossible("This answer does not fit its item.") from refusal
    if isinstance(event, AnswerAccepted) and event.player not in room.players:
        raise _Impossible("Nobody sits under this handle.")


def _may_be_keyed(room: Room, event: ItemRekeyed) -> bool:
    current = room.rounds[event.round - 1]
    wish = Rekeying(key=event.key, terms=event.terms, reason=event.reason)
    return fits(current.dealt or current.item, wish)
