"""A mapping that never changes, but of which a longer one is made cheaply: answers and players of a room.

A full copy for every answer of a room of thousands would cost more than everything else that is done
about the answer. Here what was added last lies in a small part of its own, copied each time, and joins
the large shared part when it has grown to about its square root.
"""

from collections.abc import ItemsView, Iterator, KeysView, Mapping, ValuesView
from typing import Any, Generic, TypeVar

Key = TypeVar("Key")
Value = TypeVar("Value")


class Growing(Mapping[Key, Value], Generic[Key, Value]):
    """Keys in the order in which they first came, as in a dictionary."""

    __slots__ = ("_length", "_recent", "_settled")

    def __init__(
        self,
        settled: Mapping[Key, Value],
        recent: dict[Key, Value] | None = None,
        *,
        length: int | None = None,
    ) -> None:
        """What is in `recent` is newer than what is in `settled`; neither may be changed afterwards.

        Whoever knows how many keys there are in both together says so by `length`.
        """
        self._settled = settled
        self._recent = recent or {}
        if length is None:
            length = len(settled) + sum(key not in settled for key in self._recent)
        self._length = length

    def __getitem__(self, key: Key) -> Value:
        return self._recent[key] if key in self._recent else self._settled[key]

    def __contains__(self, key: object) -> bool:
        return key in self._recent or key in self._settled

    def get(self, key: Key, default: Any = None) -> Any:
        """The value, or `default`; without the exception by which a mapping finds that there is none."""
        return self._recent[key] if key in self._recent else self._settled.get(key, default)

    def __len__(self) -> int:
        return self._length

    def __iter__(self) -> Iterator[Key]:
        return iter(self._whole())

    def __repr__(self) -> str:
        return f"Growing({self._whole()!r})"

    def keys(self) -> KeysView[Key]:
        """All keys."""
        return self._whole().keys()

    def values(self) -> ValuesView[Value]:
        """All values."""
        return self._whole().values()

    def items(self) -> ItemsView[Key, Value]:
        """All pairs."""
        return self._whole().items()

    def longer(self, key: Key, value: Value) -> "Growing[Key, Value]":
        """The mapping with this value as well; a known key keeps its place."""
        recent = {**self._recent, key: value}
        length = self._length + (key not in self)
        if len(recent) ** 2 > len(self._settled):
            return Growing({**self._settled, **recent}, length=length)
        return Growing(self._settled, recent, length=length)

    def _whole(self) -> Mapping[Key, Value]:
        return {**self._settled, **self._recent} if self._recent else self._settled


def with_one(mapping: Mapping[Key, Value], key: Key, value: Value) -> Growing[Key, Value]:
    """Any mapping with one more value; the mapping itself stays as it is."""
    known = mapping if isinstance(mapping, Growing) else Growing(mapping)
    return known.longer(key, value)
