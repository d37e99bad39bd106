"""Looks and their answers to bytes and back: JSON, of looks compressed, since their records repeat much."""

import zlib
from functools import cache

import orjson
from pydantic import TypeAdapter

from quizroom.second_look.asked import AskedLook, GivenAnswer


def write_look(look: AskedLook) -> bytes:
    """The bytes that are kept of a look."""
    return zlib.compress(_looks().dump_json(look), 6)


def read_look(body: bytes) -> AskedLook:
    """The look that these bytes hold."""
    return _looks().validate_python(orjson.loads(zlib.decompress(body)))


def write_answer(answer: GivenAnswer) -> bytes:
    """The bytes that are kept of an answer."""
    return _answers().dump_json(answer)


def read_answer(body: bytes) -> GivenAnswer:
    """The answer that these bytes hold."""
    return _answers().validate_python(orjson.loads(body))


@cache
def _looks() -> TypeAdapter[AskedLook]:
    return TypeAdapter(AskedLook)


@cache
def _answers() -> TypeAdapter[GivenAnswer]:
    return TypeAdapter(GivenAnswer)
