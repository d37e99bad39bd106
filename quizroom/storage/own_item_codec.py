"""Items of the library to bytes and back: a JSON object of the fields of `OwnItem`."""

from functools import cache

import orjson
from pydantic import TypeAdapter

from quizroom.questions.own import OwnItem


def write_own_item(own: OwnItem) -> bytes:
    """The bytes that are kept."""
    return orjson.dumps(_adapter().dump_python(own, mode="json"))


def read_own_item(body: bytes) -> OwnItem:
    """The item that these bytes hold."""
    return _adapter().validate_json(body)


@cache
def _adapter() -> TypeAdapter[OwnItem]:
    return TypeAdapter(OwnItem)
