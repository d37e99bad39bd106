"""The list of a host's reviews: found, planned for a day, put away, copied, deleted."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from typing import Literal, Protocol

from quizroom.room.commands import PrepareReview
from quizroom.room.host_orders import LONGEST_TITLE
from quizroom.room.refusals import Refused
from quizroom.room.state import Room
from quizroom.room.stations import items_to_come
from quizroom.service.ports import Clock
from quizroom.service.reviews import NoDoorFree, Reviews, room_of_order

OPENS_UNTIL = timedelta(hours=12)
"""A door that was to open while no server was there opens for so long afterwards, and then no more."""
COPY = "Copy of "
Dealt = Literal["same", "anew"]


@dataclass(frozen=True, slots=True, kw_only=True)
class ListedReview:
    """A review in the list; `rounds` is how many were planned."""

    room: str
    title: str
    course: str
    rounds: int
    prepared_at: datetime
    door_opened: bool = False
    finished_at: datetime | None = None
    planned_at: datetime | None = None
    opens_itself: bool = False
    archived_at: datetime | None = None


class ReviewShelf(Protocol):
    """What is kept about reviews for the list alone. Titles follow the log, in the same transaction.

    Every change may raise `NotStored`.
    """

    def of_host(self, host: str) -> Sequence[ListedReview]:
        """All reviews of a host, newest first."""

    def plan(self, room: str, at: datetime | None, *, opens_itself: bool) -> None:
        """Note when a review is planned, or that it is not."""

    def archive(self, room: str, at: datetime | None) -> None:
        """Put a review away, or take it out again."""

    def doors_due(self, after: datetime, until: datetime) -> tuple[str, ...]:
        """Reviews whose door is shut and is to open by itself, planned in that time and not put away."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ReviewList:
    """What owners do with their reviews as things; `erase` takes one out of memory, tables and files."""

    shelf: ReviewShelf
    reviews: Reviews
    erase: Callable[[str], None]
    clock: Clock

    def plan(self, room: Room, at: datetime | None, *, opens_itself: bool) -> None:
        """Plan a review for a moment, or for none.

        Raises:
            Refused: its door is open already, or it is over.
        """
        if at is not None and room.phase != "preparing":
            raise Refused("wrong_phase")
        self.shelf.plan(room.id, at, opens_itself=opens_itself and at is not None)

    def archive(self, room: Room, *, on: bool) -> None:
        """Put a review away, or take it out again. Raises `Refused` while a class is in it."""
        if on:
            refuse_in_class(room)
        self.shelf.archive(room.id, self.clock.now() if on else None)

    def copy(self, room: Room, *, dealt: Dealt, order: str) -> Room:
        """Lay the review out again, with the same items or dealt anew; the same order again finds that one.

        Raises:
            UnknownCourse: to be dealt anew, its course list is not there.
            CannotDeal: nor does that yield the items.
        """
        made = room_of_order(room.host, order)
        known = self.reviews.rooms.find(made)
        if known is not None:
            return known
        plan = replace(room.plan, title=title_of_copy(room.plan.title), rehearsal=False, imported=False)
        if dealt == "anew":
            return self.reviews.lay_out(made, replace(plan, seed=self.reviews.new_seed()), host=room.host)
        items = (*(opened.item for opened in room.rounds), *items_to_come(room))
        return self.reviews.rooms.handle(made, PrepareReview(plan=plan, items=items, host=room.host))

    def delete(self, room: Room) -> None:
        """Erase a review with its log. Raises `Refused` while a class is in it."""
        refuse_in_class(room)
        self.erase(room.id)

    def open_doors_that_are_due(self) -> tuple[str, ...]:
        """Open the doors of reviews whose time has come; which those were."""
        now = self.clock.now()
        due = self.shelf.doors_due(now - OPENS_UNTIL, now)
        opened = []
        for room in due:
            known = self.reviews.rooms.find(room)
            if known is None or known.phase != "preparing":
                continue
            try:
                self.reviews.open_door(known)
            except NoDoorFree:  # another time
                continue
            opened.append(room)
        return tuple(opened)


def refuse_in_class(room: Room) -> None:
    """Let pass what may be done only before the door is open or after the end.

    Raises:
        Refused: `in_class`.
    """
    if room.phase not in ("preparing", "finished"):
        raise Refused("in_class")


def title_of_copy(title: str) -> str:
    """What a copy is called."""
    return title if title.startswith(COPY) else (COPY + title)[:LONGEST_TITLE].rstrip()
