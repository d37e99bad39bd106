"""Copies of frozen values with some fields changed, for what happens thousands of times in a second."""

from typing import Any, TypeVar

Value = TypeVar("Value")


def changed(value: Value, **changes: Any) -> Value:
    """As `dataclasses.replace`, for frozen classes with slots that compute nothing when they are made.

    `replace` asks for every field's description and calls `__init__` with all of them; a room has more than
    twenty, and every answer makes a new one.

    Raises:
        TypeError: the class has no such field.
    """
    copy: Value = object.__new__(type(value))
    slots: tuple[str, ...] = type(value).__slots__  # type: ignore[attr-defined] # what has none raises
    for name in slots:
        object.__setattr__(copy, name, changes.pop(name) if name in changes else getattr(value, name))
    if changes:
        raise TypeError(f"{type(value).__name__} has no {', '.join(changes)}")
    return copy
