"""Reading what comes over the wire and writing what goes out."""

from collections.abc import Sequence
from dataclasses import fields
from functools import cache
from operator import attrgetter
from typing import Any, get_args

import orjson
from pydantic import TypeAdapter, ValidationError

from quizroom.knowledge.record import Record
from quizroom.protocol.blueprint import BlueprintGrid
from quizroom.protocol.desk_settings import DeskSettings
from quizroom.protocol.group_messages import GroupSettings
from quizroom.protocol.me import Me
from quizroom.protocol.messages import ClientMessage
from quizroom.protocol.null_characters import holds_null
from quizroom.protocol.replies import Reply, Tally
from quizroom.views.desk_model import DeskView, RosterRow
from quizroom.views.own_model import OwnView
from quizroom.views.public_model import PublicView

Outgoing = Reply | Tally | PublicView | OwnView | DeskView | DeskSettings | BlueprintGrid | GroupSettings | Me

REPLY_FIELDS = tuple(field.name for field in fields(Reply))
REPLY_PARTS = ("public", "own", "desk", "reviews")
"""Fields of a reply that hold more than plain values."""
PARTS_OF_REPLY = attrgetter(*REPLY_PARTS)
VALUES_OF_REPLY = attrgetter(*REPLY_FIELDS)
NO_PARTS = (None,) * len(REPLY_PARTS)


class NotJson(ValueError):
    """A text that is not the JSON of one value."""


class BadMessage(Exception):
    """A message that cannot be read; `where` names the field."""

    def __init__(self, message_id: str, where: str) -> None:
        """Remember the id, so that even this message is answered."""
        super().__init__(where)
        self.message_id = message_id
        self.where = where


def read_message(raw: Any) -> ClientMessage:
    """The message in `raw`; unknown fields, types and values are errors.

    Raises:
        BadMessage: with the id, as far as one could be read, and the field at fault.
    """
    try:
        # Through JSON, because strict reading of Python values would refuse a list for a tuple.
        return read_text(orjson.dumps(raw))
    except orjson.JSONEncodeError as error:
        raise BadMessage(id_of(raw), "message: not plain JSON") from error


def read_text(text: bytes) -> ClientMessage:
    """The message in a JSON text, as `read_message`.

    Raises:
        BadMessage: likewise.
        NotJson: it is none.
    """
    if holds_null(text):
        raise BadMessage(id_in(text), "message: a text holds the null character")
    try:
        return _reader().validate_json(text, strict=True, extra="forbid")
    except ValidationError as error:
        first = error.errors(include_url=False, include_context=False, include_input=False)[0]
        if first["type"] == "json_invalid":
            raise NotJson(first["msg"]) from error
        where = ".".join(str(part) for part in first["loc"]) or "message"
        raise BadMessage(id_in(text), f"{where}: {first['msg']}") from error


def write(outgoing: Outgoing) -> Any:
    """Plain lists, dictionaries and scalars for the wire."""
    plain = _plain(outgoing) if isinstance(outgoing, Reply) else None
    return _writers()[type(outgoing)].dump_python(outgoing, mode="json") if plain is None else plain


def write_text(reply: Reply) -> bytes:
    """The same of a reply, as JSON text."""
    plain = _plain(reply)
    return _writers()[Reply].dump_json(reply) if plain is None else orjson.dumps(plain)


def _plain(reply: Reply) -> dict[str, Any] | None:
    """A reply in plain values, which are written as they are; None if it holds more, as few do."""
    if PARTS_OF_REPLY(reply) != NO_PARTS:
        return None
    return dict(zip(REPLY_FIELDS, VALUES_OF_REPLY(reply), strict=True))


def write_rows(rows: Sequence[RosterRow]) -> list[Any]:
    """A part of the list of players on a desk, which is written in parts where it is long."""
    return [_row_writer().dump_python(row, mode="json") for row in rows]


def write_record(record: Record) -> Any:
    """A record by itself, as the atlas hands it out."""
    return _record_writer().dump_python(record, mode="json")


def id_of(raw: Any) -> str:
    """The id of a message that may be anything at all; empty if there is none."""
    found = raw.get("id") if isinstance(raw, dict) else None
    return found[:64] if isinstance(found, str) and found.isprintable() else ""


def id_in(text: bytes) -> str:
    """The id of a message in a JSON text."""
    try:
        return id_of(orjson.loads(text))
    except orjson.JSONDecodeError as error:
        raise NotJson(str(error)) from error


@cache
def _reader() -> TypeAdapter[ClientMessage]:
    return TypeAdapter(ClientMessage)


@cache
def _row_writer() -> TypeAdapter[RosterRow]:
    return TypeAdapter(RosterRow)


@cache
def _record_writer() -> TypeAdapter[Record]:
    return TypeAdapter(Record)


@cache
def _writers() -> dict[type[Outgoing], TypeAdapter[Any]]:
    return {kind: TypeAdapter(kind) for kind in get_args(Outgoing)}
