"""Items that hosts wrote, taken from a review's file into the library of whoever takes the file."""

from collections.abc import Iterable
from dataclasses import dataclass

from quizroom.questions.model import Item
from quizroom.questions.own import OwnItem, tidied
from quizroom.questions.own_taken import is_same, own_of
from quizroom.service.own_items import MOST_ITEMS, OwnItems, TooManyOwnItems


@dataclass(frozen=True, slots=True, kw_only=True)
class FiledItems:
    """The service, over the library of own items."""

    library: OwnItems

    def new(self, host: str, items: Iterable[Item]) -> tuple[OwnItem, ...]:
        """What hosts wrote and this host does not have yet, each once."""
        known = [kept.own for kept in self.library.all(host)]
        found: list[OwnItem] = []
        for own in filter(None, map(own_of, items)):
            tidy = tidied(own)
            if not any(is_same(tidy, one) for one in (*known, *found)):
                found.append(tidy)
        return tuple(found)

    def refuse_too_many(self, host: str, items: Iterable[Item]) -> None:
        """Let pass what the library has room for. Raises `TooManyOwnItems`."""
        if len(self.library.all(host)) + len(self.new(host, items)) > MOST_ITEMS:
            raise TooManyOwnItems

    def take(self, host: str, items: Iterable[Item]) -> None:
        """Put what is new into the library; taken again it makes no doubles.

        The pictures must be this host's. Raises `TooManyOwnItems`, `NotStored`.
        """
        for own in self.new(host, items):
            self.library.write(host, own)
