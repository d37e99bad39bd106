"""The one character that no text holds: databases refuse it, and that would look like a failure of theirs."""

from typing import Any

import orjson

NULL = "\0"
"""U+0000. PostgreSQL's text cannot hold it (its documentation, 8.3)."""
_WRITTEN = rb"\u0000"


def holds_null(body: bytes) -> bool:
    """Whether some text in this JSON holds the null character; false for what is no JSON at all."""
    if _WRITTEN not in body:
        return False
    try:
        return _is_in(orjson.loads(body))
    except orjson.JSONDecodeError:
        return False


def _is_in(value: Any) -> bool:
    match value:
        case str():
            return NULL in value
        case list():
            return any(map(_is_in, value))
        case dict():
            return any(NULL in name or _is_in(inner) for name, inner in value.items())
        case _:
            return False
