"""Copies of frozen values with some fields changed, for what happens thousands of times in a second."""

from collections.abc import Callable
from functools import cache
from operator import attrgetter
from typing import Any, TypeVar

Value = TypeVar("Value")


def changed(value: Value, **changes: Any) -> Value:
    """As `dataclasses.replace`, for frozen classes with slots that compute nothing when they are made.

    `replace` asks for every field's description and calls `__init__` with all of them; a room has more than
    twenty, and every answer makes a new one.

    Raises:
        TypeError: the class has no such field.
    """
    kind: type = type(value)
    copy: Value = object.__new__(kind)
    values, setters = _slots_of(kind)
    for setter, known in zip(setters.values(), values(value), strict=True):
        setter(copy, known)
    for name, new in changes.items():
        if name not in setters:
            raise TypeError(f"{kind.__name__} has no {name}")
        setters[name](copy, new)
    return copy


@cache
def _slots_of(kind: type) -> tuple[Callable[[Any], tuple[Any, ...]], dict[str, Callable[[Any, Any], None]]]:
    """What reads all fields of a value at once, and what sets each; of classes with two fields or more."""
    names: tuple[str, ...] = kind.__slots__  # type: ignore[attr-defined] # what has none raises
    return attrgetter(*names), {name: getattr(kind, name).__set__ for name in names}
