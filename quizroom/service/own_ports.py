"""What the library of hosts' own items needs from outside."""

from dataclasses import dataclass
from datetime import datetime
from typing import Protocol

from quizroom.questions.own import OwnItem


@dataclass(frozen=True, slots=True, kw_only=True)
class KeptItem:
    """An item of a host's own as it was last saved."""

    id: str
    host: str
    changed_at: datetime
    own: OwnItem


@dataclass(frozen=True, slots=True, kw_only=True)
class KeptPicture:
    """A picture as it is shown: `body` is WebP, width and height are pixels."""

    name: str
    host: str
    made_at: datetime
    width: int
    height: int
    body: bytes


class OwnItemStore(Protocol):
    """The library. Every change may raise `NotStored`."""

    def keep(self, kept: KeptItem) -> None:
        """Keep an item, in place of what was kept under its id before."""

    def find(self, host: str, item: str) -> KeptItem | None:
        """An item of this host; None if there is none, or it belongs to another."""

    def of_host(self, host: str) -> tuple[KeptItem, ...]:
        """All items of a host, the one changed last first."""

    def drop(self, host: str, item: str) -> None:
        """Take an item out of the library; reviews that hold it keep it."""


class PictureStore(Protocol):
    """The pictures. Every change may raise `NotStored`."""

    def keep(self, picture: KeptPicture) -> None:
        """Keep a picture; it never changes afterwards."""

    def find(self, name: str) -> KeptPicture | None:
        """The picture with this name."""

    def count(self, host: str) -> int:
        """How many pictures of a host are kept."""

    def sweep(self, before: datetime) -> int:
        """Erase pictures from before that which are in no item of a library and in no review; how many."""
