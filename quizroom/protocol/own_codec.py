"""Reading items that a host has written, and writing what their page is shown."""

from functools import cache
from typing import Any, get_args

from pydantic import TypeAdapter, ValidationError

from quizroom.protocol.null_characters import holds_null
from quizroom.protocol.own_items import DeskProblem, OwnItemFace, OwnLibrary, PictureKept
from quizroom.protocol.review_files import ReviewFilePreview, ReviewFileRefused, ReviewTaken
from quizroom.questions.model import LETTERS
from quizroom.questions.own import OwnItem

LARGEST_ITEM = 60_000
"""Bytes."""
MOST_SPELLINGS_SENT = 50
MOST_MUSCLES = 20

OwnShown = (
    OwnLibrary | OwnItemFace | PictureKept | DeskProblem | ReviewFilePreview | ReviewFileRefused | ReviewTaken
)


class UnreadableItem(Exception):
    """What was sent is no item; the text names the field."""


def read_own_item_sent(body: bytes) -> OwnItem:
    """The item in the body of a request; unknown fields, types and values are errors.

    Raises:
        UnreadableItem: naming the field at fault.
    """
    if holds_null(body):
        raise UnreadableItem("a text holds the null character")
    try:
        own: OwnItem = _reader().validate_json(body, strict=True, extra="forbid")
    except ValidationError as error:
        first = error.errors(include_url=False, include_context=False, include_input=False)[0]
        where = ".".join(str(part) for part in first["loc"]) or "item"
        raise UnreadableItem(f"{where}: {first['msg']}") from error
    for name, sent, most in (
        ("options", own.options, len(LETTERS)),
        ("accepted", own.accepted, MOST_SPELLINGS_SENT),
        ("muscles", own.muscles, MOST_MUSCLES),
        ("taken", own.taken, MOST_SPELLINGS_SENT),
    ):
        if len(sent) > most:
            raise UnreadableItem(f"{name}: at most {most} can be kept")
    return own


def write_own(shown: OwnShown) -> Any:
    """Plain lists, dictionaries and scalars."""
    return _writers()[type(shown)].dump_python(shown, mode="json")


@cache
def _reader() -> TypeAdapter[OwnItem]:
    return TypeAdapter(OwnItem)


@cache
def _writers() -> dict[type, TypeAdapter[Any]]:
    return {kind: TypeAdapter(kind) for kind in get_args(OwnShown)}
