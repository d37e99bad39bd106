"""Events to bytes and back: a JSON object `{"kind": class name, "event": fields}`."""

from functools import cache
from typing import get_args

import orjson
from pydantic import TypeAdapter, ValidationError

from quizroom.room.events import Event


class UnreadableEvent(Exception):
    """A stored event is not what this version of the program knows."""


def write_event(event: Event) -> bytes:
    """The bytes that go into the log."""
    kind = type(event).__name__
    return b'{"kind":"%b","event":%b}' % (kind.encode(), _adapters()[kind].dump_json(event))


def read_event(body: bytes) -> Event:
    """The event that these bytes hold.

    Raises:
        UnreadableEvent: with the kind and what is wrong.
    """
    try:
        stored = orjson.loads(body)
        return _adapters()[stored["kind"]].validate_python(stored["event"], extra="forbid")
    except (orjson.JSONDecodeError, KeyError, TypeError, ValidationError) as error:
        raise UnreadableEvent(str(error)) from error


@cache
def _adapters() -> dict[str, TypeAdapter[Event]]:
    return {kind.__name__: TypeAdapter(kind) for kind in get_args(Event)}
