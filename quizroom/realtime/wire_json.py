"""JSON for the socket server: orjson with the signature it expects."""

from typing import Any

import orjson


def dumps(value: Any, **_options: Any) -> str:
    """Compact JSON text; the options (separators) are what orjson does anyway."""
    return orjson.dumps(value).decode()


def loads(text: str | bytes, **_options: Any) -> Any:
    """The value of a JSON text."""
    return orjson.loads(text)
