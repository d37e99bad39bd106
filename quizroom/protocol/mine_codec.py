"""Reading what a player's own page sends, and writing what it is shown."""

from functools import cache
from typing import Any, TypeVar, get_args

from pydantic import TypeAdapter, ValidationError

from quizroom.protocol.mine import (
    FlagOfLook,
    LookAnswers,
    LookFlagged,
    LookOutcomes,
    PlanSettings,
    PracticeOrder,
    PracticeSet,
    SecondLook,
    Today,
)
from quizroom.protocol.null_characters import holds_null

Sent = TypeVar("Sent", LookAnswers, FlagOfLook, PlanSettings, PracticeOrder)
Shown = Today | SecondLook | PracticeSet | LookOutcomes | LookFlagged | PlanSettings


class Unreadable(Exception):
    """What was sent is not what this request takes; the text names the field."""


def read_sent(kind: type[Sent], body: bytes) -> Sent:
    """The body of a request; unknown fields, types and values are errors.

    Raises:
        Unreadable: naming the field at fault.
    """
    if holds_null(body):
        raise Unreadable("a text holds the null character")
    try:
        read: Sent = _adapters()[kind].validate_json(body, strict=True, extra="forbid")
    except ValidationError as error:
        first = error.errors(include_url=False, include_context=False, include_input=False)[0]
        where = ".".join(str(part) for part in first["loc"]) or "body"
        raise Unreadable(f"{where}: {first['msg']}") from error
    return read


def write_shown(shown: Shown) -> Any:
    """Plain lists, dictionaries and scalars."""
    return _adapters()[type(shown)].dump_python(shown, mode="json")


@cache
def _adapters() -> dict[type, TypeAdapter[Any]]:
    return {kind: TypeAdapter(kind) for kind in (LookAnswers, FlagOfLook, PracticeOrder, *get_args(Shown))}
