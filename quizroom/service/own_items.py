"""The library of a host's own items: written, mended, and dealt into reviews."""

from collections.abc import Callable
from dataclasses import dataclass, replace

from quizroom.knowledge.catalogue import Catalogue
from quizroom.questions.model import Item
from quizroom.questions.own import OwnItem, tidied
from quizroom.questions.own_dealt import dealt
from quizroom.questions.own_findings import Finding, is_ready
from quizroom.questions.own_rules import findings
from quizroom.questions.syllabus import Syllabus, syllabus_of
from quizroom.service.own_ports import KeptItem, OwnItemStore, PictureStore
from quizroom.service.ports import Clock

MOST_ITEMS = 2000
"""Of one host."""


class NoSuchOwnItem(Exception):
    """The host has no item with this id."""


class NotReady(Exception):
    """The item has something to mend before it may be asked."""


class TooManyOwnItems(Exception):
    """The host keeps as many items as the server allows."""


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnItems:
    """The service; `new_id` names new items."""

    catalogue: Catalogue
    store: OwnItemStore
    pictures: PictureStore
    clock: Clock
    new_id: Callable[[], str]

    def all(self, host: str) -> tuple[KeptItem, ...]:
        """All items of a host, the one changed last first."""
        return self.store.of_host(host)

    def find(self, host: str, item: str) -> KeptItem:
        """One item of a host. Raises `NoSuchOwnItem`."""
        found = self.store.find(host, item)
        if found is None:
            raise NoSuchOwnItem(item)
        return found

    def write(self, host: str, own: OwnItem) -> KeptItem:
        """Put a new item into the library, finished or not. Raises `TooManyOwnItems`, `NotStored`."""
        if len(self.store.of_host(host)) >= MOST_ITEMS:
            raise TooManyOwnItems
        return self._kept(host, self.new_id(), own)

    def mend(self, host: str, item: str, own: OwnItem) -> KeptItem:
        """Save an item anew; reviews that hold it keep it as it was. Raises `NoSuchOwnItem`, `NotStored`."""
        return self._kept(host, self.find(host, item).id, own)

    def duplicate(self, host: str, item: str) -> KeptItem:
        """Put a copy into the library. Raises as `find` and `write` do."""
        return self.write(host, self.find(host, item).own)

    def drop(self, host: str, item: str) -> None:
        """Take an item out of the library; reviews that hold it keep it. Raises `NotStored`."""
        self.store.drop(host, item)

    def findings(self, own: OwnItem) -> tuple[Finding, ...]:
        """What is wrong with an item."""
        return findings(tidied(own), self._any_syllabus())

    def preview(self, own: OwnItem) -> Item | None:
        """The item as it would be asked; None as long as it has errors."""
        found = self.findings(own)
        if any(one.error for one in found):
            return None
        return dealt(tidied(own), "preview", self._any_syllabus(), 1)

    def for_review(self, host: str, item: str, syllabus: Syllabus, seed: int) -> Item:
        """The item as it goes into a review.

        Raises:
            NoSuchOwnItem: the host has none with this id.
            NotReady: it has something to mend.
        """
        found = self.find(host, item)
        if not is_ready(findings(found.own, syllabus)):
            raise NotReady(item)
        return dealt(found.own, found.id, syllabus, seed)

    def _kept(self, host: str, item: str, own: OwnItem) -> KeptItem:
        kept = KeptItem(
            id=item, host=host, changed_at=self.clock.now(), own=self._with_own_picture(host, own)
        )
        self.store.keep(kept)
        return kept

    def _with_own_picture(self, host: str, own: OwnItem) -> OwnItem:
        """Tidied, with the true size of its picture; with none, if that is not this host's."""
        tidy = tidied(own)
        found = None if tidy.picture is None else self.pictures.find(tidy.picture.name)
        if tidy.picture is None or found is None or found.host != host:
            return replace(tidy, picture=None)
        return replace(tidy, picture=replace(tidy.picture, width=found.width, height=found.height))

    def _any_syllabus(self) -> Syllabus:
        """Rules of writing hold for every course list alike: the first one stands for all."""
        courses = self.catalogue.courses
        return syllabus_of(self.catalogue, courses[min(courses)])
