"""A review of this server as a file for its host."""

import base64
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import replace
from datetime import datetime
from functools import cache
from typing import Any

import orjson
from pydantic import TypeAdapter

from quizroom.exchange.review_file.lateness import without_lateness
from quizroom.exchange.review_file.model import (
    FORMAT,
    VERSION,
    PictureInFile,
    PlanInFile,
)
from quizroom.exchange.review_file.plan import plan_in_file
from quizroom.exchange.review_file.sent_out import without_sent_out
from quizroom.exchange.review_file.station_steps import without_stations
from quizroom.exchange.review_file.steps import Step, step_adapter, told
from quizroom.exchange.review_file.twin_steps import with_twins_in_place
from quizroom.questions.model import Item
from quizroom.room.events import AnswerAccepted, Event
from quizroom.room.state import Room
from quizroom.room.stations import items_to_come
from quizroom.room.talk_events import TwinAdded

PictureOf = Callable[[str], bytes | None]
"""The bytes of the picture with this name, if it is still there."""


def review_file(room: Room, log: Sequence[Event], picture_of: PictureOf, *, happened: bool) -> bytes:
    """The file of a review, as JSON (RFC 8259).

    Args:
        room: the review.
        log: all its events.
        picture_of: finds pictures; one that is gone leaves its words.
        happened: whether answers and all else that happened go along; only of a finished review.
    """
    steps = tuple(_steps(room, without_lateness(log))) if happened and room.phase == "finished" else ()
    items = tuple(_items(room, steps))
    named = _named_pictures(items, picture_of)
    items = tuple(_with_picture(item, named) for item in items)
    written = {
        "format": FORMAT,
        "version": VERSION,
        "plan": _dumped(plan_in_file(room.plan)),
        "items": [_dumped(item) for item in items],
        "pictures": [_dumped(picture) for picture in named.values()],
        "happened": _happened(room.prepared_at, steps, named) if steps else None,
    }
    return orjson.dumps(written, option=orjson.OPT_INDENT_2)


def _items(room: Room, steps: Sequence[Step]) -> Iterator[Item]:
    """All items in their order: as dealt where the steps key them anew, else as they are keyed now.

    Twins that the steps bring in are not among them.
    """
    twins = {step.item.id for step in steps if isinstance(step, TwinAdded)}
    asked = ((current.dealt or current.item) if steps else current.item for current in room.rounds)
    for item in (*asked, *items_to_come(room)):
        if item.id not in twins:
            yield item


def _steps(room: Room, log: Sequence[Event]) -> Iterator[Step]:
    """What happened, by the players who are still there; of several answers to a round the last."""
    handles = {player.id: player.handle for player in room.players.values()}
    asked = [(current.dealt or current.item).id for current in room.rounds]
    ahead = [item.id for item in items_to_come(room)]
    log = tuple(without_stations(tuple(without_sent_out(log))))
    log = tuple(with_twins_in_place(log, asked, ahead))
    last = {_slot(event): place for place, event in enumerate(log) if isinstance(event, AnswerAccepted)}
    for place, event in enumerate(log):
        if isinstance(event, AnswerAccepted) and last[_slot(event)] != place:
            continue
        step = told(event, handles)
        if step is not None:
            yield step


def _slot(event: AnswerAccepted) -> tuple[str, int, bool]:
    return event.player, event.round, event.again


def _happened(
    prepared_at: datetime | None, steps: Sequence[Step], named: Mapping[str, PictureInFile]
) -> dict[str, Any]:
    told_steps = (
        replace(step, item=_with_picture(step.item, named)) if isinstance(step, TwinAdded) else step
        for step in steps
    )
    return {"prepared_at": prepared_at, "steps": [dumped_step(step) for step in told_steps]}


def dumped_step(step: Step) -> Any:
    """A step in plain lists, dictionaries and scalars."""
    read = {"step": type(step).__name__, "event": step}
    return step_adapter().dump_python(step_adapter().validate_python(read), mode="json")


def _named_pictures(items: Sequence[Item], picture_of: PictureOf) -> dict[str, PictureInFile]:
    """The pictures by the names that this server knows, each with a name for the file alone."""
    named: dict[str, PictureInFile] = {}
    for item in items:
        body = None if item.picture is None else picture_of(item.picture.name)
        if item.picture is not None and body is not None and item.picture.name not in named:
            name = f"picture-{len(named) + 1}"
            named[item.picture.name] = PictureInFile(name=name, body=base64.b64encode(body).decode("ascii"))
    return named


def _with_picture(item: Item, named: Mapping[str, PictureInFile]) -> Item:
    if item.picture is None:
        return item
    found = named.get(item.picture.name)
    return replace(item, picture=None if found is None else replace(item.picture, name=found.name))


def _dumped(value: PlanInFile | Item | PictureInFile) -> Any:
    return _adapters()[type(value)].dump_python(value, mode="json")


@cache
def _adapters() -> dict[type, TypeAdapter[Any]]:
    return {kind: TypeAdapter(kind) for kind in (PlanInFile, Item, PictureInFile)}
